#include "core/door/plan_answer.h"

#include <algorithm>
#include <string>

#include "core/door/reason_answer.h"
#include "core/plan/reason_words.h"

namespace lanework::door {
namespace {

using catalogue::Drill;
using session::ChangeKind;

Node text(std::string value) { return Node::make_text(std::move(value)); }
Node text(std::string_view value) { return Node::make_text(std::string(value)); }
Node text(const char* value) { return Node::make_text(value); }
Node number(std::int64_t value) { return Node::make_integer(value); }

const Drill& drill_at(const EveningMatter& matter, int index) {
  return matter.catalogue.drills[static_cast<std::size_t>(index)];
}

std::string dose_words(const Drill& drill, int dose) {
  return catalogue::dose_in_words(drill, drill.dose.steps[static_cast<std::size_t>(dose)]);
}

std::string_view family_word(catalogue::Family family) { return catalogue::word(catalogue::family_words(), family); }

Node item_node(const session::Item& item, const EveningMatter& matter) {
  const Drill& drill = drill_at(matter, item.drill);
  const catalogue::Rung& rung = drill.rungs[static_cast<std::size_t>(item.rung)];
  const catalogue::DoseStep& step = drill.dose.steps[static_cast<std::size_t>(item.dose)];
  Node node = Node::make_table();
  node.set("drill", text(drill.id));
  node.set("name", text(drill.name));
  node.set("family", text(family_word(drill.family)));
  node.set("phase", text(catalogue::word(catalogue::phase_words(), drill.phase)));
  node.set("formation", text(catalogue::word(catalogue::formation_words(), drill.formation)));
  node.set("rung", text(rung.key));
  node.set("rung_words", text(rung.change));
  node.set("sets", number(step.sets));
  node.set("amount", number(step.amount));
  node.set("dose", text(dose_words(drill, item.dose)));
  node.set("change_seconds", number(item.change.count));
  node.set("takes_seconds", number(item.takes.count));
  node.set("starts_seconds", number(item.starts.count));
  if (item.rest.count > 0) node.set("rest_seconds", number(item.rest.count));
  return node;
}

Node change_node(const session::Change& change, const EveningMatter& matter) {
  Node node = Node::make_table();
  node.set("kind", text(change_word(change.kind)));
  node.set("drill", text(drill_at(matter, change.drill).id));
  node.set("from", text(change_from(change, matter.catalogue)));
  node.set("to", text(change_to(change, matter.catalogue)));
  node.set("why", text(plan::words(change.why, matter.catalogue)));
  node.set("reason", door::to_node(change.why, matter.catalogue));
  return node;
}

Node objective_node(const plan::Objective& objective) {
  Node node = Node::make_table();
  node.set("uncovered", number(objective.uncovered));
  node.set("shortfall", number(objective.shortfall));
  node.set("changes", number(objective.changes));
  node.set("preference", number(objective.preference));
  return node;
}

Node time_node(const PlanAnswer& answer, const EveningMatter& matter) {
  Node node = Node::make_table();
  if (answer.time.sessions_simulated == 0) node.set("spread", text("formula"));
  node.set("median_seconds", number(answer.time.median.count));
  node.set("simulated_median_seconds", number(answer.time.simulated_median.count));
  node.set("nine_in_ten_seconds", number(answer.time.nine_in_ten.count));
  node.set("finish", text(clock_time(matter.evening, answer.time.simulated_median)));
  node.set("finish_nine_in_ten", text(clock_time(matter.evening, answer.time.nine_in_ten)));
  node.set("moving_permille", number(answer.time.moving_permille));
  node.set("saving", text(answer.time.best_saving.sentence));
  return node;
}

// Used and allowed in whole units: what is used rounded up, what is allowed rounded down.
Node loads_node(const plan::Plan& plan) {
  Node list = Node::make_array();
  for (std::size_t l = 0; l < plan::kLoads; ++l) {
    const int scale = static_cast<plan::Load>(l) == plan::Load::kNewDrills ? 1 : 1000;
    Node node = Node::make_table();
    node.set("load", text(plan::load_words(static_cast<plan::Load>(l))));
    node.set("planned", number((plan.solution.evaluation.loads[l] + scale - 1) / scale));
    node.set("ceiling", number(plan.problem.ceiling[l] / scale));
    list.items.push_back(std::move(node));
  }
  return list;
}

Node breaks_node(const session::Breaks& breaks) {
  Node node = Node::make_table();
  node.set("count", number(breaks.count));
  node.set("seconds_each", number(breaks.each.count));
  node.set("why", text(breaks.why));
  return node;
}

template <class Values>
Node nodes_of(const Values& values, const catalogue::Catalogue& catalogue) {
  Node list = Node::make_array();
  for (const auto& value : values) list.items.push_back(door::to_node(value, catalogue));
  return list;
}

Node conflict_node(const plan::Conflict& conflict, const catalogue::Catalogue& catalogue) {
  Node node = Node::make_table();
  Node demands = Node::make_array();
  for (const plan::Demand& demand : conflict.demands) demands.items.push_back(text(plan::words(demand, catalogue)));
  node.set("conflict", std::move(demands));
  node.set("demands", nodes_of(conflict.demands, catalogue));
  node.set("way_out", text(plan::words(conflict.ways_out, catalogue)));
  node.set("ways_out", nodes_of(conflict.ways_out, catalogue));
  return node;
}

void add_reasons(Node& node, const plan::Plan& plan, const EveningMatter& matter) {
  Node changes = Node::make_array();
  for (const session::Change& change : plan.session.changes) changes.items.push_back(change_node(change, matter));
  node.set("changes", std::move(changes));
  Node uncovered = Node::make_array();
  for (const plan::Uncovered& family : plan.uncovered) {
    Node row = Node::make_table();
    row.set("family", text(family_word(family.family)));
    row.set("cure", text(plan::words(family.cure, matter.catalogue)));
    row.set("reason", door::to_node(family.cure, matter.catalogue));
    uncovered.items.push_back(std::move(row));
  }
  node.set("uncovered", std::move(uncovered));
  node.set("loads", loads_node(plan));
  Node prices = Node::make_array();
  for (const plan::MinutePrice& price : plan.prices) {
    Node row = Node::make_table();
    row.set("minutes", number(price.minutes));
    row.set("buys", text(plan::words(price, matter.catalogue)));
    row.set("gains", nodes_of(price.buys, matter.catalogue));
    prices.items.push_back(std::move(row));
  }
  node.set("minute_prices", std::move(prices));
}

}  // namespace

PlanAnswer answer_plan(const EveningMatter& matter, plan::KernelWorkspace& workspace, Spread spread) {
  PlanAnswer answer;
  answer.plan = plan::plan_session(matter.catalogue, matter.routine, matter.evening, workspace);
  if (answer.plan.outcome != plan::Outcome::kOptimal) return answer;
  const session::Session& session = answer.plan.session;
  answer.time = spread == Spread::kFormula ? clock::session_time(session, matter.catalogue, matter.evening, 0)
                                           : clock::session_time(session, matter.catalogue, matter.evening);
  return answer;
}

Node to_node(const PlanAnswer& answer, const EveningMatter& matter) {
  const plan::Plan& plan = answer.plan;
  const bool optimal = plan.outcome == plan::Outcome::kOptimal;
  Node node = Node::make_table();
  node.set("answer", text("plan"));
  node.set("version", number(1));
  node.set("outcome", text(optimal ? "optimal" : "infeasible"));
  if (optimal) node.set("objective", objective_node(plan.solution.evaluation.objective));
  node.set("slot_seconds", number(matter.evening.slot.count));
  node.set("margin_seconds", number(plan.margin.count));
  node.set("planned_seconds", number(plan.session.planned.count));
  node.set("turnout", number(matter.evening.turnout));
  node.set("gathering_seconds", number(plan.problem.gathering));
  if (matter.evening.breaks.count > 0) node.set("breaks", breaks_node(matter.evening.breaks));
  if (optimal) node.set("time", time_node(answer, matter));
  Node items = Node::make_array();
  for (const session::Item& item : plan.session.items) items.items.push_back(item_node(item, matter));
  node.set("items", std::move(items));
  if (optimal) {
    add_reasons(node, plan, matter);
  } else {
    node.set("infeasible", conflict_node(plan.conflict, matter.catalogue));
  }
  node.set("restrictions_as_known", text(matter.restrictions.as_known));
  return node;
}

const char* change_word(ChangeKind kind) {
  switch (kind) {
    case ChangeKind::kSmallerDose:
      return "smaller-dose";
    case ChangeKind::kLargerDose:
      return "larger-dose";
    case ChangeKind::kEasierRung:
      return "easier-rung";
    case ChangeKind::kHarderRung:
      return "harder-rung";
    case ChangeKind::kLeftOut:
      return "left-out";
    case ChangeKind::kNewDrill:
      return "new-drill";
  }
  return "";
}

std::string change_from(const session::Change& change, const catalogue::Catalogue& catalogue) {
  const Drill& drill = catalogue.drills[static_cast<std::size_t>(change.drill)];
  switch (change.kind) {
    case ChangeKind::kEasierRung:
    case ChangeKind::kHarderRung:
      return drill.rungs[static_cast<std::size_t>(change.from)].change;
    case ChangeKind::kNewDrill:
      return "";
    default:
      return dose_words(drill, change.from);
  }
}

std::string change_to(const session::Change& change, const catalogue::Catalogue& catalogue) {
  const Drill& drill = catalogue.drills[static_cast<std::size_t>(change.drill)];
  switch (change.kind) {
    case ChangeKind::kEasierRung:
    case ChangeKind::kHarderRung:
      return drill.rungs[static_cast<std::size_t>(change.to)].change;
    case ChangeKind::kLeftOut:
      return "";
    default:
      return dose_words(drill, change.to);
  }
}

std::string change_sentence(const session::Change& change, const catalogue::Catalogue& catalogue) {
  const std::string name = catalogue.drills[static_cast<std::size_t>(change.drill)].name;
  std::string what;
  switch (change.kind) {
    case ChangeKind::kLeftOut:
      what = "left out";
      break;
    case ChangeKind::kNewDrill:
      what = change_to(change, catalogue) + ", not of the routine";
      break;
    default:
      what = change_to(change, catalogue) + " instead of " + change_from(change, catalogue);
  }
  return name + ": " + what;
}

std::vector<ReasonedChanges> changes_by_reason(const plan::Plan& plan, const EveningMatter& matter) {
  std::vector<ReasonedChanges> out;
  for (const session::Change& change : plan.session.changes) {
    auto group = std::find_if(out.begin(), out.end(), [&](const ReasonedChanges& g) { return g.reason == change.why; });
    if (group == out.end()) {
      group = out.insert(out.end(), {change.why, plan::words(change.why, matter.catalogue), {}});
    }
    group->lines.push_back(change_sentence(change, matter.catalogue));
  }
  return out;
}

std::string clock_time(const session::Evening& evening, Seconds after_start) {
  return to_text(TimeOfDay{evening.start.minutes + static_cast<int>((after_start.count + 59) / 60)});
}

}  // namespace lanework::door
