#include "app/cli/card_matter.h"

#include <algorithm>

#include "app/cli/venue_matter.h"
#include "core/plan/reason_words.h"

namespace lanework::cli {
namespace {

using door::EveningMatter;
using door::PlanAnswer;

const std::vector<std::string> kStopAlways = {
    "Sharp, sudden or growing pain: stop that player. No more tonight; tell the lead.",
    "A knock to the head, or odd behaviour after a fall: off, do not return today, get help.",
    "Chest pain, fainting, breathing trouble, neck or spine pain, a limb out of shape: call emergency services.",
};

std::string with_capital(std::string sentence) {
  if (!sentence.empty() && sentence[0] >= 'a' && sentence[0] <= 'z') {
    sentence[0] = static_cast<char>(sentence[0] - 'a' + 'A');
  }
  return sentence;
}

std::string phase_in_words(catalogue::Phase phase) {
  switch (phase) {
    case catalogue::Phase::kStart:
      return "Start";
    case catalogue::Phase::kLoosen:
      return "Loosen";
    case catalogue::Phase::kBuild:
      return "Build";
    case catalogue::Phase::kSpring:
      return "Jump";
    case catalogue::Phase::kRun:
      return "Run";
  }
  return "";
}

std::string need_in_words(catalogue::Need need) {
  switch (need) {
    case catalogue::Need::kPartner:
      return "a partner";
    case catalogue::Need::kWall:
      return "a wall";
    case catalogue::Need::kBallEach:
      return "a ball each";
    case catalogue::Need::kBallAPair:
      return "a ball a pair";
    case catalogue::Need::kMat:
      return "a mat each";
    case catalogue::Need::kSoftGround:
      return "soft ground";
    case catalogue::Need::kLine:
      return "a line on the ground";
  }
  return "";
}

const char* mark_word(session::ChangeKind kind) {
  switch (kind) {
    case session::ChangeKind::kNewDrill:
      return "not of the routine";
    case session::ChangeKind::kEasierRung:
      return "easier tonight";
    case session::ChangeKind::kHarderRung:
      return "harder tonight";
    case session::ChangeKind::kSmallerDose:
      return "shorter tonight";
    case session::ChangeKind::kLargerDose:
      return "longer tonight";
    case session::ChangeKind::kLeftOut:
      return "";
  }
  return "";
}

// A reason that several changes share stands once, beside the strip, and not in every drill.
draw::MarkMatter mark_of(int drill, const std::vector<session::Change>& changes,
                         const catalogue::Catalogue& catalogue) {
  for (const session::Change& change : changes) {
    if (change.drill != drill || change.kind == session::ChangeKind::kLeftOut) continue;
    const auto sharing = std::count_if(changes.begin(), changes.end(),
                                       [&](const session::Change& other) { return other.why == change.why; });
    return {mark_word(change.kind), sharing > 1 ? "" : plan::words(change.why, catalogue)};
  }
  return {};
}

// 'The routine needs 19 min 8 s, the slot is 14 min. Left out: Easy laps, Hip closing. 5 drills changed, marked below.'
std::vector<std::string> change_lines(const plan::Plan& plan, const EveningMatter& matter) {
  std::vector<std::string> out;
  for (const door::ReasonedChanges& group : door::changes_by_reason(plan, matter)) {
    std::string left_out;
    int marked = 0;
    for (const session::Change& change : plan.session.changes) {
      if (change.why != group.reason) continue;
      const std::string& name = matter.catalogue.drills[static_cast<std::size_t>(change.drill)].name;
      if (change.kind == session::ChangeKind::kLeftOut) {
        left_out += (left_out.empty() ? "" : ", ") + name;
      } else {
        ++marked;
      }
    }
    std::string line = with_capital(group.why) + ".";
    if (group.lines.size() == 1) {
      out.push_back(group.lines[0] + ". " + line);
      continue;
    }
    if (!left_out.empty()) line += " Left out: " + left_out + ".";
    if (marked > 0)
      line += " " + std::to_string(marked) + (marked == 1 ? " drill" : " drills") + " changed, marked below.";
    out.push_back(std::move(line));
  }
  return out;
}

draw::DrillMatter drill_matter(const session::Item& item, const clock::SessionLine& line, const PlanAnswer& answer,
                               const EveningMatter& matter) {
  const catalogue::Drill& drill = matter.catalogue.drills[static_cast<std::size_t>(item.drill)];
  const catalogue::Rung& rung = drill.rungs[static_cast<std::size_t>(item.rung)];
  draw::DrillMatter out;
  out.name = drill.name;
  out.rung_words = rung.change;
  out.dose_words = catalogue::dose_in_words(drill, drill.dose.steps[static_cast<std::size_t>(item.dose)]);
  out.formation = static_cast<draw::Formation>(drill.formation);
  out.phase = phase_in_words(drill.phase);
  out.rest_seconds = static_cast<int>(item.rest.count);
  out.change_seconds = static_cast<int>(item.change.count);
  out.starts_second = static_cast<int>(item.starts.count);
  out.telling_seconds = static_cast<int>(std::min(item.takes.count, rounded_up(line.time.telling).count));
  out.takes_seconds = static_cast<int>(item.takes.count);
  out.cues = drill.cues;
  for (const catalogue::WatchFor& watch : drill.watch) out.watch.push_back({watch.fault, watch.cue});
  for (const catalogue::Need need : drill.needs) out.needs.push_back(need_in_words(need));
  for (const catalogue::Need need : rung.needs) out.needs.push_back(need_in_words(need));
  out.figure = &catalogue::figure_on(drill, rung);
  out.mark = mark_of(item.drill, answer.plan.session.changes, matter.catalogue);
  return out;
}

// FNV-1a, 64 bits: a short name for a text, nothing secret.
std::uint64_t digest(const std::string& text) {
  std::uint64_t hash = 0xCBF29CE484222325ULL;
  for (const char c : text) {
    hash ^= static_cast<unsigned char>(c);
    hash *= 0x100000001B3ULL;
  }
  return hash;
}

const people::Player* player_of(const std::string& id, const EveningMatter& matter) {
  for (const people::Player& player : matter.roster) {
    if (player.id == id) return &player;
  }
  return nullptr;
}

// 'top gear three quarters, 3 passes': the same drill, so that its name need not be said twice.
std::string easier_version(const people::Swap& swap, const catalogue::Drill& drill) {
  const std::string said = "does " + drill.name + ", ";
  return swap.instruction.starts_with(said) ? swap.instruction.substr(said.size()) : swap.instruction;
}

draw::SlipSwaps swaps_matter(const people::PlayerSwaps& swaps, const PlanAnswer& answer, const EveningMatter& matter) {
  const people::Player* player = player_of(swaps.player, matter);
  draw::SlipSwaps out;
  out.name = player == nullptr ? swaps.player : player->name;
  out.instruction = swaps.instruction;
  for (const people::Swap& swap : swaps.swaps) {
    const session::Item& item = answer.plan.session.items[static_cast<std::size_t>(swap.item)];
    const catalogue::Drill& drill = matter.catalogue.drills[static_cast<std::size_t>(item.drill)];
    out.swaps.push_back(swap.drill == item.drill ? "In " + drill.name + ": " + easier_version(swap, drill)
                                                 : "Instead of " + drill.name + ": " + swap.instruction);
  }
  return out;
}

std::string name_of(int player, const door::Slip& slip) { return slip.players[static_cast<std::size_t>(player)].name; }

draw::SlipPartners partners_matter(const people::PartnerGroup& group, const door::Slip& slip) {
  draw::SlipPartners out;
  for (const int player : group.players) out.names.push_back(name_of(player, slip));
  if (group.players.size() == 3) out.note = "taking turns";
  if (group.non_contact)
    out.note += std::string(out.note.empty() ? "" : "; ") + "version without contact, or at the wall";
  return out;
}

draw::SlipPartners alone_matter(int player, const door::Slip& slip) {
  return {{name_of(player, slip)}, "with the coach, or at the wall"};
}

draw::SlipRegrouped regrouped_matter(const door::Regrouped& drill, const door::Slip& slip, const PlanAnswer& answer,
                                     const EveningMatter& matter) {
  const session::Item& item = answer.plan.session.items[static_cast<std::size_t>(drill.item)];
  draw::SlipRegrouped out;
  out.drill = matter.catalogue.drills[static_cast<std::size_t>(item.drill)].name;
  for (const people::PartnerGroup& group : drill.groups) {
    const auto& usual = slip.partners.groups;
    const bool as_usual = std::any_of(
        usual.begin(), usual.end(), [&](const people::PartnerGroup& other) { return other.players == group.players; });
    if (!as_usual) out.partners.push_back(partners_matter(group, slip));
  }
  for (const int player : drill.alone) out.partners.push_back(alone_matter(player, slip));
  return out;
}

}  // namespace

const std::vector<std::string>& stop_always() { return kStopAlways; }

draw::StripMatter strip_matter(const session::Strip& strip) {
  draw::StripMatter out;
  out.name = strip.name;
  for (const catalogue::Surface surface : strip.surface) {
    out.surface +=
        (out.surface.empty() ? "" : ", ") + std::string(catalogue::word(catalogue::surface_words(), surface));
  }
  out.lane_length_mm = static_cast<int>(strip.lane_length.count);
  out.cone_spacing_mm = static_cast<int>(strip.cone_spacing.count);
  out.lanes = strip.lanes;
  out.lane_gap_mm = static_cast<int>(strip.lane_gap.count);
  out.area_length_mm = static_cast<int>(strip.area_length.count);
  out.area_width_mm = static_cast<int>(strip.area_width.count);
  out.pace_mm = kPaceMillimetres;
  out.pace_of = "an adult";
  return out;
}

std::string session_id(const PlanAnswer& answer, const EveningMatter& matter) {
  constexpr char kLetters[] = "23456789abcdefghjkmnpqrstuvwxyz";  // none that are easily mistaken
  std::uint64_t hash = digest(to_json(door::to_node(answer, matter)) + matter.evening.squad);
  std::string out = to_iso(matter.evening.date) + "-";
  for (int i = 0; i < 8; ++i) {
    out += kLetters[hash % (sizeof kLetters - 1)];
    hash /= sizeof kLetters - 1;
  }
  return out;
}

draw::CardMatter card_matter(const PlanAnswer& answer, const EveningMatter& matter) {
  const session::Evening& evening = matter.evening;
  const plan::Plan& plan = answer.plan;
  draw::CardMatter out;
  out.club = evening.club;
  out.squad = evening.squad;
  out.date_words = to_words(evening.date);
  out.date_iso = to_iso(evening.date);
  out.start_minute_of_day = evening.start.minutes;
  out.turnout = evening.turnout;
  out.slot_seconds = static_cast<int>(evening.slot.count);
  out.gathering_seconds = plan.problem.gathering;
  out.planned_seconds = static_cast<int>(answer.time.simulated_median.count);
  out.nine_in_ten_seconds = static_cast<int>(answer.time.nine_in_ten.count);
  out.finish = door::clock_time(evening, answer.time.simulated_median);
  out.finish_nine_in_ten = door::clock_time(evening, answer.time.nine_in_ten);
  out.saving = answer.time.best_saving.sentence;
  out.strip = strip_matter(evening.strip);
  for (std::size_t i = 0; i < plan.session.items.size(); ++i) {
    const session::Item& item = plan.session.items[i];
    out.drills.push_back(drill_matter(item, answer.time.lines[i], answer, matter));
    if (i == 0) out.drills.back().change_seconds = 0;  // the first drill's change is the gathering
    const catalogue::Drill& drill = matter.catalogue.drills[static_cast<std::size_t>(item.drill)];
    for (const std::string& line : drill.stop_if) {
      if (std::find(out.stop_drill.begin(), out.stop_drill.end(), line) == out.stop_drill.end()) {
        out.stop_drill.push_back(line);
      }
    }
  }
  out.changes = evening.remarks;
  for (std::string& line : change_lines(plan, matter)) out.changes.push_back(std::move(line));
  for (const plan::Uncovered& family : plan.uncovered) {
    out.not_covered.push_back(matter.catalogue.family(family.family).name + ": " +
                              plan::words(family.cure, matter.catalogue));
  }
  out.stop_always = kStopAlways;
  out.danger_signs = danger_signs();
  out.restrictions_as_known = matter.restrictions.as_known;
  out.session_id = session_id(answer, matter);
  return out;
}

draw::NoticeMatter notice_matter(const EveningMatter& matter) {
  const session::Evening& evening = matter.evening;
  draw::NoticeMatter out;
  out.club = evening.club;
  out.squad = evening.squad;
  out.date_words = to_words(evening.date);
  out.date_iso = to_iso(evening.date);
  out.start_minute_of_day = evening.start.minutes;
  out.headline = "No session tonight";
  out.why =
      evening.remarks.empty() ? std::vector<std::string>{with_capital(evening.no_session) + "."} : evening.remarks;
  out.instead = {
      "Tell the families, and see that every child is fetched or sheltered.",
      "The adult in charge on the spot decides; this holds back, it never allows against what is seen there.",
      "What was measured grows old: ask again before anything is begun.",
  };
  out.stop_always = kStopAlways;
  return out;
}

draw::NoticeMatter nothing_fits_matter(const EveningMatter& matter, const std::string& why) {
  draw::NoticeMatter out = notice_matter(matter);
  out.headline = "No card for this evening";
  out.why = {with_capital(why) + "."};
  out.instead = {
      "Ask the lead: one of what stands above has to give way, or the evening needs more minutes.",
      "The adult in charge on the spot decides what is done until then.",
  };
  return out;
}

draw::SlipMatter slip_matter(const door::Slip& slip, const PlanAnswer& answer, const EveningMatter& matter) {
  draw::SlipMatter out;
  out.club = matter.evening.club;
  out.squad = matter.evening.squad;
  out.date_words = to_words(matter.evening.date);
  out.date_iso = to_iso(matter.evening.date);
  out.start_minute_of_day = matter.evening.start.minutes;
  out.restrictions_as_known = matter.restrictions.as_known;
  for (const people::PartnerGroup& group : slip.partners.groups) out.partners.push_back(partners_matter(group, slip));
  for (const int player : slip.partners.alone) out.partners.push_back(alone_matter(player, slip));
  for (const people::PlayerSwaps& swaps : slip.swaps) {
    draw::SlipSwaps made = swaps_matter(swaps, answer, matter);
    if (swaps.taking_part == people::TakingPart::kSitsOut) {
      out.sits_out.push_back(std::move(made));
    } else if (!made.swaps.empty()) {
      out.swaps.push_back(std::move(made));
    } else {
      out.notes.push_back(made.name + " joins in with everything tonight; mind: " + made.instruction + ".");
    }
  }
  for (const door::Regrouped& drill : slip.regrouped) {
    out.regrouped.push_back(regrouped_matter(drill, slip, answer, matter));
  }
  for (const std::string& note : slip.partners.notes) out.notes.push_back(with_capital(note) + ".");
  out.session_id = session_id(answer, matter);
  return out;
}

}  // namespace lanework::cli
