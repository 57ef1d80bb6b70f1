// The block as JSON and its shortfalls in words.
#include <algorithm>
#include <array>
#include <cstdlib>
#include <set>
#include <utility>

#include "core/catalogue/loads.h"
#include "core/door/reason_node.h"
#include "core/door/replan_words.h"
#include "core/door/squad_block.h"
#include "core/plan/credits.h"
#include "core/plan/duration_words.h"

namespace lanework::door {
namespace {

Node text(std::string value) { return Node::make_text(std::move(value)); }
Node number(std::int64_t value) { return Node::make_integer(value); }

const catalogue::Catalogue& catalogue_of(const SquadBlock& block) { return *block.wishes.outline.catalogue; }

const catalogue::Drill& drill_at(const SquadBlock& block, int index) {
  return catalogue_of(block).drills[static_cast<std::size_t>(index)];
}

int week_of(const SquadBlock& block, Date date) { return days_between(block.wishes.outline.monday, date) / 7; }

Node item_node(const SquadBlock& block, const BlockItem& item) {
  const catalogue::Drill& drill = drill_at(block, item.drill);
  const catalogue::DoseStep& step = drill.dose.steps[static_cast<std::size_t>(item.dose)];
  Node node = Node::make_table();
  node.set("drill", text(drill.id));
  node.set("rung", text(drill.rungs[static_cast<std::size_t>(item.rung)].key));
  node.set("sets", number(step.sets));
  node.set("amount", number(step.amount));
  if (item.steps > 0) node.set("steps", number(item.steps));
  if (item.done) node.set("done", Node::make_boolean(*item.done));
  return node;
}

// Position of the slot's session in the problem, or -1: a match day's.
int session_of(const SquadBlock& block, std::size_t slot) {
  const std::vector<std::size_t>& evenings = block.built.evening_of;
  const auto found = std::find(evenings.begin(), evenings.end(), slot);
  return found == evenings.end() ? -1 : static_cast<int>(found - evenings.begin());
}

void tell_what_happened(const block::PastSession& past, Node& node) {
  using Happened = block::Report::Happened;
  const block::Report& report = past.report;
  node.set("happened", text(to_word(report.happened)));
  if (report.minutes) node.set("minutes_had", number(*report.minutes));
  if (report.happened == Happened::kHeld || report.happened == Happened::kCutShort)
    node.set("did_it", text(report.quarters == block::kMostDidIt   ? "most"
                            : report.quarters == block::kHalfDidIt ? "half"
                                                                   : "few"));
}

Node session_node(const SquadBlock& block, std::size_t slot, const block::Evaluation& evaluation) {
  const club::PlannedSlot& at = block.wishes.slots[slot];
  Node node = Node::make_table();
  node.set("week", number(week_of(block, at.date) + 1));
  node.set("date", text(to_iso(at.date)));
  node.set("start", text(to_text(at.start)));
  node.set("minutes", number(at.length.count / 60));
  node.set("strip", text(at.strip_id));
  Node lanes = Node::make_array();
  for (const int lane : at.lanes) lanes.items.push_back(number(lane));
  node.set("lanes", std::move(lanes));
  node.set("turnout", number(block.wishes.outline.evenings[slot].turnout));
  if (at.days_to_match) node.set("days_to_match", number(*at.days_to_match));
  node.set("match_day", Node::make_boolean(at.match_day));
  if (const int s = session_of(block, slot); s >= 0) {
    node.set("budget_steps", number(block.built.problem.sessions[static_cast<std::size_t>(s)].budget));
    node.set("planned_steps", number(evaluation.session_steps[static_cast<std::size_t>(s)]));
  }
  if (const block::PastSession* past = past_of(block, slot)) tell_what_happened(*past, node);
  Node drills = Node::make_array();
  for (const BlockItem& item : items_of(block, slot)) drills.items.push_back(item_node(block, item));
  node.set("drills", std::move(drills));
  return node;
}

// Of a block without a session to come there is no problem with drills: its sets are those that stood.
Node over_spell_node(const SquadBlock& block, std::size_t p, Node node) {
  const std::vector<std::vector<int>>& sets = block.wishes.outline.rolling->standing.sets;
  std::vector<int> before;
  for (const catalogue::RoutineLine& line : block.wishes.outline.routine->lines) before.push_back(line.drill);
  if (p > 0) before = sets[p - 1];
  const auto ids = [&](const std::vector<int>& drills, const std::vector<int>& without) {
    Node list = Node::make_array();
    for (const int drill : drills) {
      if (std::find(without.begin(), without.end(), drill) == without.end())
        list.items.push_back(text(drill_at(block, drill).id));
    }
    return list;
  };
  node.set("drills", ids(sets[p], {}));
  node.set("comes_in", ids(sets[p], before));
  node.set("leaves", ids(before, sets[p]));
  return node;
}

Node spell_node(const SquadBlock& block, std::size_t p) {
  const block::Problem& problem = block.built.problem;
  Node node = Node::make_table();
  int first = 0;
  int weeks = 0;
  for (std::size_t w = 0; w < problem.weeks.size(); ++w) {
    if (problem.weeks[w].spell != static_cast<int>(p)) continue;
    if (weeks == 0) first = static_cast<int>(w) + 1;
    ++weeks;
  }
  node.set("first_week", number(first));
  node.set("weeks", number(weeks));
  if (problem.sessions.empty() && block.wishes.outline.rolling) return over_spell_node(block, p, std::move(node));
  Node drills = Node::make_array();
  Node in = Node::make_array();
  Node out = Node::make_array();
  for (std::size_t d = 0; d < problem.drills.size(); ++d) {
    const bool now = block.answer.plan.sets[p][d] != 0;
    const bool then = p == 0 ? problem.drills[d].current : block.answer.plan.sets[p - 1][d] != 0;
    const std::string& id = drill_at(block, problem.drills[d].drill).id;
    if (now) drills.items.push_back(text(id));
    if (now && !then) in.items.push_back(text(id));
    if (then && !now) out.items.push_back(text(id));
  }
  node.set("drills", std::move(drills));
  node.set("comes_in", std::move(in));
  node.set("leaves", std::move(out));
  return node;
}

struct WeekSum {
  std::vector<std::int64_t> work_ms;  // by family
  catalogue::LoadSum loads;
};

// What was done by so many counts for so many quarters.
void add_past(const catalogue::Catalogue& catalogue, const block::PastSession& past, WeekSum& week) {
  std::vector<std::int64_t> work_ms(catalogue.families.size(), 0);
  for (const block::PastItem& item : past.items) {
    if (!item.done) continue;
    const catalogue::Drill& drill = catalogue.drills[static_cast<std::size_t>(item.planned.drill)];
    const catalogue::DoseStep& step = drill.dose.steps[static_cast<std::size_t>(item.planned.dose)];
    work_ms[static_cast<std::size_t>(drill.family)] += plan::work_of(drill, step).count;
  }
  for (std::size_t f = 0; f < work_ms.size(); ++f)
    week.work_ms[f] += work_ms[f] * past.report.quarters / block::kMostDidIt;
  week.loads += {past.used[0], past.used[1], past.used[2]};
}

// Match days counted in, from the drills themselves.
std::vector<WeekSum> week_sums(const SquadBlock& block) {
  const catalogue::Catalogue& catalogue = catalogue_of(block);
  std::vector<WeekSum> out(block.built.problem.weeks.size());
  for (WeekSum& week : out) week.work_ms.assign(catalogue.families.size(), 0);
  for (std::size_t slot = 0; slot < block.wishes.slots.size(); ++slot) {
    WeekSum& week = out[static_cast<std::size_t>(week_of(block, block.wishes.slots[slot].date))];
    if (const block::PastSession* past = past_of(block, slot)) {
      add_past(catalogue, *past, week);
      continue;
    }
    for (const BlockItem& item : items_of(block, slot)) {
      const catalogue::Drill& drill = drill_at(block, item.drill);
      const catalogue::DoseStep& step = drill.dose.steps[static_cast<std::size_t>(item.dose)];
      week.work_ms[static_cast<std::size_t>(drill.family)] += plan::work_of(drill, step).count;
      week.loads += catalogue::load_of(drill, drill.rungs[static_cast<std::size_t>(item.rung)], step,
                                       block.wishes.slots[slot].strip.lane_length, catalogue.limits);
    }
  }
  return out;
}

Node load_node(std::int64_t used_thousandths, std::int64_t ceiling) {
  Node node = Node::make_table();
  node.set("used", Node::make_real(static_cast<double>(used_thousandths) / 1000));
  node.set("ceiling", number(ceiling));
  return node;
}

Node weeks_node(const SquadBlock& block, const block::Evaluation& evaluation) {
  const block::Problem& problem = block.built.problem;
  const std::vector<WeekSum> sums = week_sums(block);
  Node list = Node::make_array();
  for (std::size_t w = 0; w < problem.weeks.size(); ++w) {
    Node node = Node::make_table();
    node.set("week", number(static_cast<std::int64_t>(w) + 1));
    node.set("spell", number(problem.weeks[w].spell + 1));
    Node families = Node::make_array();
    for (std::size_t f = 0; f < problem.families.size(); ++f) {
      Node row = Node::make_table();
      row.set("family", text(std::string(catalogue::word(catalogue::family_words(), problem.families[f].family))));
      row.set("credits", number(evaluation.credits[w][f]));
      row.set("target", number(problem.weeks[w].target[f]));
      row.set("work_seconds", number((sums[w].work_ms[f] + 500) / 1000));
      families.items.push_back(std::move(row));
    }
    node.set("families", std::move(families));
    if (!block.wishes.outline.evenings.empty()) {
      const catalogue::Ceilings& band = catalogue_of(block).ceilings_for(block.wishes.outline.evenings.front().age);
      node.set("contacts", load_node(sums[w].loads.contacts, band.contacts_week));
      node.set("eccentric", load_node(sums[w].loads.eccentric, band.eccentric_week));
      node.set("hard_running_metres", load_node(sums[w].loads.hard_running, band.hard_running_week));
    }
    list.items.push_back(std::move(node));
  }
  return list;
}

// '1-3' or '2, 5-6'.
std::string weeks_in_words(const std::vector<std::size_t>& weeks) {
  std::string out;
  for (std::size_t i = 0; i < weeks.size();) {
    std::size_t last = i;
    while (last + 1 < weeks.size() && weeks[last + 1] == weeks[last] + 1) ++last;
    if (!out.empty()) out += ", ";
    out += std::to_string(weeks[i] + 1);
    if (last > i) out += "-" + std::to_string(weeks[last] + 1);
    i = last + 1;
  }
  return out;
}

const char* weekday_words(int weekday) {
  constexpr std::array<const char*, 7> words = {"Mondays", "Tuesdays",  "Wednesdays", "Thursdays",
                                                "Fridays", "Saturdays", "Sundays"};
  return words[static_cast<std::size_t>(weekday)];
}

// 'trunk 20 s, balance 10 s': work a player a week, the families that gain or lose most, at most three.
std::string families_in_words(const SquadBlock& block, const block::MinutePrice& price) {
  const auto weeks = static_cast<std::int64_t>(block.built.problem.weeks.size());
  std::vector<std::pair<std::int64_t, std::string>> rows;
  for (std::size_t f = 0; f < price.credits.size(); ++f) {
    const catalogue::FamilyRow& row = catalogue_of(block).family(block.built.problem.families[f].family);
    const std::int64_t changed = price.minutes > 0 ? price.credits[f] : -price.credits[f];
    const std::int64_t seconds = changed * row.session_work.count / (4 * weeks);
    if (seconds > 0) rows.emplace_back(seconds, row.name);
  }
  std::stable_sort(rows.begin(), rows.end(), [](const auto& a, const auto& b) { return a.first > b.first; });
  std::string out;
  for (std::size_t i = 0; i < std::min<std::size_t>(3, rows.size()); ++i)
    out += (i == 0 ? "" : ", ") + rows[i].second + " " + plan::in_words(rows[i].first);
  return out;
}

std::string tenths_of_percent(std::int64_t part, std::int64_t whole) {
  const std::int64_t tenths = whole > 0 ? (1000 * part + whole / 2) / whole : 0;
  return std::to_string(tenths / 10) + "." + std::to_string(tenths % 10) + " %";
}

std::string price_sentence(const SquadBlock& block, const block::MinutePrice& price) {
  const int minutes = std::abs(price.minutes);
  const std::string day = std::string(weekday_words(price.day.weekday)) + " at " + to_text(price.day.start);
  const std::int64_t changed = price.minutes > 0 ? price.after - price.before : price.before - price.after;
  // Less than a thousandth is what the search itself is sure of.
  const bool nothing = changed * 1000 < price.before;
  const std::string families = families_in_words(block, price);
  if (price.minutes > 0) {
    const std::string head = std::to_string(minutes) + " min more on " + day;
    if (nothing) return head + " would buy nothing, and no other day's more";
    return head + ": " + (families.empty() ? "doses nearer the routine's" : families + " more work a player a week") +
           "; the block is worth " + tenths_of_percent(changed, price.before) + " more";
  }
  if (nothing) return day + " could be " + std::to_string(minutes) + " min shorter at no loss";
  return std::to_string(minutes) + " min fewer on " + day + " would be missed least: " +
         (families.empty() ? "doses further from the routine's" : families + " less work a player a week") +
         "; the block is worth " + tenths_of_percent(changed, price.before) + " less";
}

Node price_node(const SquadBlock& block, const block::MinutePrice& price) {
  Node node = Node::make_table();
  node.set("weekday", number(price.day.weekday + 1));
  node.set("start", text(to_text(price.day.start)));
  node.set("minutes", number(price.minutes));
  node.set("before", number(price.before));
  node.set("after", number(price.after));
  node.set("sentence", text(price_sentence(block, price)));
  return node;
}

// What the lead has fixed and the block cannot keep everywhere.
void tell_unkept_pins(const SquadBlock& block, std::vector<std::string>& out) {
  const block::Problem& problem = block.built.problem;
  std::set<std::string> pinned;
  for (const std::size_t e : block.built.evening_of) {
    for (const session::Pin& pin : block.wishes.outline.evenings[e].pins) pinned.insert(pin.drill);
  }
  for (const std::string& id : pinned) {
    const catalogue::Drill& drill = *catalogue_of(block).find(id);
    int open = 0;
    int done = 0;
    for (std::size_t d = 0; d < problem.drills.size(); ++d) {
      if (&catalogue_of(block).drills[static_cast<std::size_t>(problem.drills[d].drill)] != &drill) continue;
      for (std::size_t s = 0; s < problem.sessions.size(); ++s) {
        const auto kind = static_cast<std::size_t>(problem.sessions[s].kind);
        open += problem.kinds[kind].options[d].empty() ? 0 : 1;
        done += block.answer.plan.choice[s][d] >= 0 ? 1 : 0;
      }
    }
    if (open == 0) {
      out.push_back(drill.name + ": fixed by the lead, but no session is open to it");
    } else if (done < open) {
      out.push_back(drill.name + ": fixed by the lead, but there is no room for it in " + std::to_string(open - done) +
                    " of " + std::to_string(open) + " sessions");
    }
  }
}

// {"code": "no-lane", "strip": "north"}
Node missed_node(const club::MissedSlot& slot) {
  switch (slot.reason) {
    case club::Missed::kHoliday:
      return Coded("holiday").with("name", std::string_view(slot.of)).done();
    case club::Missed::kAwayDay:
      return Coded("away").done();
    case club::Missed::kOutOfSeason:
      return Coded("out-of-season").done();
    case club::Missed::kMatchTakesIts:
      return Coded("match-warm-up").done();
    case club::Missed::kNoLane:
      return Coded("no-lane").with("strip", std::string_view(slot.of)).done();
  }
  return Node::make_table();
}

}  // namespace

std::vector<std::string> price_sentences(const SquadBlock& block) {
  std::vector<std::string> out;
  if (block.prices.best_longer) out.push_back(price_sentence(block, *block.prices.best_longer));
  if (block.prices.best_shorter) out.push_back(price_sentence(block, *block.prices.best_shorter));
  return out;
}

std::vector<std::string> shortfalls_of(const SquadBlock& block) {
  const block::Problem& problem = block.built.problem;
  const block::Evaluation evaluation = block::evaluate(problem, block.answer.plan);
  std::vector<bool> has_session(problem.weeks.size(), false);
  for (const block::Session& session : problem.sessions) has_session[static_cast<std::size_t>(session.week)] = true;
  std::vector<std::string> out;
  for (std::size_t f = 0; f < problem.families.size(); ++f) {
    const catalogue::FamilyRow& row = catalogue_of(block).family(problem.families[f].family);
    std::vector<std::size_t> weeks;
    int most = 0;
    for (std::size_t w = 0; w < problem.weeks.size(); ++w) {
      const int missing = problem.weeks[w].target[f] - evaluation.credits[w][f];
      if (missing <= 0 || !has_session[w]) continue;
      weeks.push_back(w);
      most = std::max(most, missing);
    }
    if (weeks.empty()) continue;
    const Seconds missing(most * row.session_work.count / 4);
    const auto base = static_cast<int>(4 * row.week_work.count / row.session_work.count);
    const bool owed =
        std::any_of(weeks.begin(), weeks.end(), [&](std::size_t w) { return problem.weeks[w].target[f] > base; });
    out.push_back(row.name + ": up to " + plan::in_words(missing.count) + " of work a player short of " +
                  plan::in_words(row.week_work.count) + (owed ? " and what is owed" : "") + " in " +
                  (weeks.size() == 1 ? "week " : "weeks ") + weeks_in_words(weeks));
  }
  tell_unkept_pins(block, out);
  return out;
}

Node to_node(const SquadBlock& block) {
  const block::Evaluation evaluation = block::evaluate(block.built.problem, block.answer.plan);
  Node node = Node::make_table();
  node.set("squad", text(block.wishes.squad->id));
  node.set("name", text(block.wishes.squad->squad.name));
  node.set("routine", text(block.wishes.squad->routine.id));
  node.set("feasible", Node::make_boolean(block.answer.feasible));
  node.set("value", number(block.answer.value));
  node.set("bound", number(block::bound_points(block.answer)));
  node.set("gap_percent", Node::make_real(block::gap_ten_thousandths(block.answer) / 100.0));
  Node spells = Node::make_array();
  for (std::size_t p = 0; p < block.answer.plan.sets.size(); ++p) spells.items.push_back(spell_node(block, p));
  node.set("spells", std::move(spells));
  Node sessions = Node::make_array();
  for (std::size_t slot = 0; slot < block.wishes.slots.size(); ++slot)
    sessions.items.push_back(session_node(block, slot, evaluation));
  node.set("sessions", std::move(sessions));
  node.set("weeks", weeks_node(block, evaluation));
  Node missed = Node::make_array();
  for (const club::MissedSlot& slot : block.wishes.missed) {
    Node row = Node::make_table();
    row.set("date", text(to_iso(slot.date)));
    row.set("start", text(to_text(slot.start)));
    row.set("why", text(slot.why));
    row.set("because", missed_node(slot));
    missed.items.push_back(std::move(row));
  }
  node.set("missed", std::move(missed));
  Node shortfalls = Node::make_array();
  for (std::string& sentence : shortfalls_of(block)) shortfalls.items.push_back(text(std::move(sentence)));
  node.set("shortfalls", std::move(shortfalls));
  Node prices = Node::make_array();
  if (block.prices.best_longer) prices.items.push_back(price_node(block, *block.prices.best_longer));
  if (block.prices.best_shorter) prices.items.push_back(price_node(block, *block.prices.best_shorter));
  node.set("minute_prices", std::move(prices));
  if (block.wishes.outline.rolling) node.set("rolling", rolling_node(block));
  return node;
}

Node block_answer_node(const club::Club& club, const std::vector<SquadBlock>& squads) {
  Node node = Node::make_table();
  node.set("answer", text("block"));
  node.set("version", number(1));
  node.set("club", text(club.settings.name));
  node.set("monday", text(to_iso(club.settings.block_from)));
  node.set("weeks", number(club.settings.block_weeks));
  Node list = Node::make_array();
  for (const SquadBlock& squad : squads) list.items.push_back(to_node(squad));
  node.set("squads", std::move(list));
  return node;
}

}  // namespace lanework::door
