#include "core/people/swaps.h"

#include <algorithm>
#include <cstdlib>
#include <map>
#include <numeric>
#include <tuple>

#include "core/people/instruction.h"
#include "core/people/landings.h"

namespace lanework::people {
namespace {

using catalogue::Catalogue;
using catalogue::Drill;
using catalogue::Family;
using catalogue::Formation;
using catalogue::Need;
using catalogue::Phase;
using catalogue::Rung;

// A swap may last this much longer than what the squad does meanwhile. own-judgement
constexpr std::int64_t kMostLongerSeconds = 15;

// Families that can stand in for one, nearest first, after the family itself. own-judgement
const std::vector<Family>& related(Family family) {
  static const std::vector<std::vector<Family>> kRelated = {
      {Family::kMobility, Family::kBalance, Family::kTrunk},                         // pulse-raising
      {Family::kHipAndGroin, Family::kBalance, Family::kTrunk},                      // mobility
      {Family::kLegStrength, Family::kTrunk, Family::kMobility},                     // hip and groin
      {Family::kLegStrength, Family::kTrunk, Family::kHipAndGroin},                  // hamstring
      {Family::kBalance, Family::kHipAndGroin, Family::kHamstring},                  // trunk
      {Family::kLegStrength, Family::kTrunk, Family::kHipAndGroin},                  // balance
      {Family::kHamstring, Family::kHipAndGroin, Family::kBalance, Family::kTrunk},  // leg strength
      {Family::kLegStrength, Family::kBalance, Family::kTrunk},                      // jump-and-land
      {Family::kPulseRaising, Family::kBalance, Family::kTrunk}};                    // run-and-cut
  return kRelated.at(static_cast<std::size_t>(family));
}

// 0 the same family, 1 the nearest related one, ...; -1 when it cannot stand in.
int family_steps(Family squad, Family other) {
  if (squad == other) return 0;
  const std::vector<Family>& list = related(squad);
  const auto found = std::find(list.begin(), list.end(), other);
  return found == list.end() ? -1 : static_cast<int>(found - list.begin()) + 1;
}

// The squad's partners are busy with the squad's drill.
bool needs_somebody(const Drill& drill, const Rung& rung) {
  const auto somebody = [](Need need) { return need == Need::kPartner || need == Need::kBallAPair; };
  return drill.formation == Formation::kPairs || std::any_of(drill.needs.begin(), drill.needs.end(), somebody) ||
         std::any_of(rung.needs.begin(), rung.needs.end(), somebody);
}

// Jumping and fast running come in no phase before their own: the player is not warm yet.
bool too_early(Phase candidate, Phase squad) { return candidate >= Phase::kSpring && candidate > squad; }

struct Option {
  int family_steps = 0;
  bool other_formation = false;
  int times_done = 0;  // tonight, by this player
  std::int64_t seconds_apart = 0;
  int drill = -1;
  int rung = -1;
  int dose = -1;
  [[nodiscard]] auto distance() const {
    return std::tie(family_steps, other_formation, times_done, seconds_apart, drill, rung, dose);
  }
};

class SwapSearch {
 public:
  SwapSearch(const std::vector<Restriction>& restrictions, const Catalogue& catalogue, const Setting& setting)
      : restrictions_(restrictions), catalogue_(catalogue), setting_(setting) {
    for (const Restriction& restriction : restrictions) {
      landings_percent_ = std::min(landings_percent_, restriction.landings_percent);
      new_eccentric_ok_ = new_eccentric_ok_ && restriction.new_eccentric_ok;
    }
  }

  std::vector<Swap> run(const std::vector<SquadDrill>& session) {
    std::vector<char> barred(session.size(), 0);
    for (std::size_t i = 0; i < session.size(); ++i) barred[i] = allowed(session[i]) ? 0 : 1;
    spare_landings(session, barred);
    for (std::size_t i = 0; i < session.size(); ++i) {
      if (barred[i] == 0) ++times_done_[session[i].drill];
    }
    std::vector<Swap> swaps;
    for (std::size_t i = 0; i < session.size(); ++i) {
      if (barred[i] != 0) swaps.push_back(swap_for(static_cast<int>(i), session[i]));
    }
    return swaps;
  }

 private:
  [[nodiscard]] const Drill& drill(int index) const { return catalogue_.drills.at(static_cast<std::size_t>(index)); }
  [[nodiscard]] bool permitted(int index, int rung) const {
    const Drill& d = drill(index);
    const bool new_eccentric = !new_eccentric_ok_ && d.loads.eccentric_thousandths > 0 && !setting_.done_before(index);
    return !new_eccentric && permits_all(restrictions_, d, d.rungs.at(static_cast<std::size_t>(rung)));
  }
  [[nodiscard]] bool allowed(const SquadDrill& squad) const { return permitted(squad.drill, squad.rung); }

  // Bars as few drills as can be, so that the landings of the others are within the player's share; what is left of it
  // is there for the swaps.
  void spare_landings(const std::vector<SquadDrill>& session, std::vector<char>& barred) {
    constexpr int kWhole = 100;
    if (landings_percent_ >= kWhole) return;
    std::vector<std::int64_t> landings(session.size(), 0);
    for (std::size_t i = 0; i < session.size(); ++i) {
      if (barred[i] == 0) landings[i] = setting_.landings_of(session[i].drill, session[i].rung, session[i].dose);
    }
    const std::int64_t ceiling = setting_.landings_ceiling * landings_percent_ / kWhole;
    for (const std::size_t item : items_beyond(ceiling, landings)) {
      barred[item] = 1;
      landings[item] = 0;
    }
    landings_left_ = ceiling - std::accumulate(landings.begin(), landings.end(), std::int64_t{0});
  }

  Swap swap_for(int item, const SquadDrill& squad) {
    SwapKind kind = SwapKind::kSameDrill;
    std::optional<Option> best = same_drill(squad);
    if (!best) {
      kind = SwapKind::kOtherDrill;
      best = other_drill(squad);
    }
    if (!best) return {item, SwapKind::kNothing, -1, -1, -1, "nothing suitable here: rests, or helps the coach"};
    ++times_done_[best->drill];
    if (landings_left_) *landings_left_ -= setting_.landings_of(best->drill, best->rung, best->dose);
    const Drill& chosen = drill(best->drill);
    return {item,
            kind,
            best->drill,
            best->rung,
            best->dose,
            "does " + chosen.name + ", " + chosen.rungs[static_cast<std::size_t>(best->rung)].change + ", " +
                dose_in_words(chosen, chosen.dose.steps[static_cast<std::size_t>(best->dose)])};
  }

  // Sets seconds_apart; false when it cannot be done here, lasts too long, or has more landings than are left.
  bool fits(Option& option, const SquadDrill& squad) const {
    const std::int64_t takes = setting_.time_of(option.drill, option.rung, option.dose);
    if (takes < 0 || takes > squad.takes.count + kMostLongerSeconds) return false;
    if (landings_left_ && setting_.landings_of(option.drill, option.rung, option.dose) > *landings_left_) return false;
    option.seconds_apart = std::abs(takes - squad.takes.count);
    return true;
  }

  // The same drill on the nearest rung, with no larger dose than the squad's: an easier one where the restriction bars
  // the rung; where it counts landings, first fewer of them on the squad's own.
  [[nodiscard]] std::optional<Option> same_drill(const SquadDrill& squad) const {
    for (int rung = squad.rung; rung >= 0; --rung) {
      if (!permitted(squad.drill, rung)) continue;
      std::optional<Option> best;
      for (int dose = squad.dose; dose >= 0; --dose) {
        Option option;
        option.drill = squad.drill;
        option.rung = rung;
        option.dose = dose;
        if (fits(option, squad) && (!best || option.seconds_apart < best->seconds_apart)) best = option;
      }
      if (best) return best;
    }
    return {};
  }

  [[nodiscard]] std::optional<Option> other_drill(const SquadDrill& squad) const {
    std::optional<Option> best;
    for (int index = 0; index < static_cast<int>(catalogue_.drills.size()); ++index) {
      if (index == squad.drill) continue;
      const std::optional<Option> option = easiest_of(index, squad);
      if (option && (!best || option->distance() < best->distance())) best = option;
    }
    return best;
  }

  // Another drill on its easiest permitted rung that fits, with the dose nearest in time.
  [[nodiscard]] std::optional<Option> easiest_of(int index, const SquadDrill& squad) const {
    const Drill& own = drill(squad.drill);
    const Drill& other = drill(index);
    Option option;
    option.family_steps = family_steps(own.family, other.family);
    if (option.family_steps < 0 || too_early(other.phase, own.phase)) return {};
    option.other_formation = other.formation != own.formation;
    const auto done = times_done_.find(index);
    option.times_done = done == times_done_.end() ? 0 : done->second;
    option.drill = index;
    for (option.rung = 0; option.rung < static_cast<int>(other.rungs.size()); ++option.rung) {
      if (!permitted(index, option.rung)) continue;
      if (needs_somebody(other, other.rungs[static_cast<std::size_t>(option.rung)])) continue;
      std::optional<Option> best;
      for (option.dose = 0; option.dose < static_cast<int>(other.dose.steps.size()); ++option.dose) {
        if (fits(option, squad) && (!best || option.distance() < best->distance())) best = option;
      }
      if (best) return best;
    }
    return {};
  }

  const std::vector<Restriction>& restrictions_;
  const Catalogue& catalogue_;
  const Setting& setting_;
  int landings_percent_ = 100;
  bool new_eccentric_ok_ = true;
  std::optional<std::int64_t> landings_left_;  // where a restriction counts them
  std::map<int, int> times_done_;
};

template <class T>
bool covers(const std::vector<T>& named, T one) {
  return named.empty() || std::find(named.begin(), named.end(), one) != named.end();
}

}  // namespace

bool permits(const Restriction& restriction, const Drill& drill, const Rung& rung) {
  if (restriction.sits_out) return false;
  if (restriction.barred) {
    const auto& rungs = restriction.barred->rungs;
    return !std::binary_search(rungs.begin(), rungs.end(), std::make_pair(drill.id, rung.key));
  }
  for (const catalogue::Stress& stress : stresses_on(drill, rung)) {
    if (stress.grade > restriction.allowed_grade && covers(restriction.areas, stress.area) &&
        covers(restriction.kinds, stress.kind)) {
      return false;
    }
  }
  return true;
}

bool permits_all(const std::vector<Restriction>& restrictions, const Drill& drill, const Rung& rung) {
  return std::all_of(restrictions.begin(), restrictions.end(),
                     [&](const Restriction& restriction) { return permits(restriction, drill, rung); });
}

PlayerSwaps swaps_for(const std::string& player, const std::vector<Restriction>& restrictions,
                      const Catalogue& catalogue, const std::vector<SquadDrill>& session, const Setting& setting,
                      std::optional<Date> tonight) {
  PlayerSwaps out{player, TakingPart::kJoinsIn, {}, {}};
  const auto sits_out = [](const Restriction& restriction) { return restriction.sits_out; };
  const bool sitting = std::any_of(restrictions.begin(), restrictions.end(), sits_out);
  std::vector<std::string> instructions;
  for (const Restriction& restriction : restrictions) {
    if (sitting && !restriction.sits_out) continue;
    std::string instruction = instruction_for(restriction, tonight);
    if (std::find(instructions.begin(), instructions.end(), instruction) != instructions.end()) continue;
    out.instruction += (out.instruction.empty() ? "" : "; ") + instruction;
    instructions.push_back(std::move(instruction));
  }
  if (sitting) {
    out.taking_part = TakingPart::kSitsOut;
    return out;
  }
  out.swaps = SwapSearch(restrictions, catalogue, setting).run(session);
  if (!out.swaps.empty()) out.taking_part = TakingPart::kJoinsInWithSwaps;
  return out;
}

}  // namespace lanework::people
