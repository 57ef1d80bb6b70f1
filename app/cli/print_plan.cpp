#include "app/cli/print_plan.h"

#include "app/cli/columns.h"
#include "core/plan/reason_words.h"

namespace lanework::cli {
namespace {

using door::EveningMatter;
using door::PlanAnswer;

std::string heading(const EveningMatter& matter) {
  const session::Evening& evening = matter.evening;
  std::string out = evening.squad;
  if (!evening.club.empty()) out += ", " + evening.club;
  out += "\n" + to_words(evening.date) + ", " + to_text(evening.start) + ", " + std::to_string(evening.turnout) +
         " players";
  if (evening.late > 0) out += " (" + std::to_string(evening.late) + " late)";
  out += ", youngest " + std::to_string(evening.age) + ", slot " + minutes_seconds(evening.slot.count) + " min";
  out += ", routine '" + matter.routine.name + "'\n";
  return out;
}

std::string session_rows(const PlanAnswer& answer, const EveningMatter& matter) {
  std::vector<std::vector<std::string>> rows;
  for (const session::Item& item : answer.plan.session.items) {
    const catalogue::Drill& drill = matter.catalogue.drills[static_cast<std::size_t>(item.drill)];
    const catalogue::Rung& rung = drill.rungs[static_cast<std::size_t>(item.rung)];
    const catalogue::DoseStep& step = drill.dose.steps[static_cast<std::size_t>(item.dose)];
    if (item.rest.count > 0) {
      rows.push_back({minutes_seconds((item.starts - item.change - item.rest).count), "Break",
                      matter.evening.breaks.why, "", "", minutes_seconds(item.rest.count)});
    }
    rows.push_back({minutes_seconds(item.starts.count), drill.name, rung.change, catalogue::dose_in_words(drill, step),
                    std::string(catalogue::word(catalogue::formation_words(), drill.formation)),
                    minutes_seconds(item.takes.count)});
  }
  rows.insert(rows.begin(), {"from", "drill", "how", "dose", "stand", "takes"});
  return in_columns(rows, "  ");
}

std::string list(const std::string& title, const std::vector<std::string>& lines) {
  if (lines.empty()) return "";
  std::string out = "\n" + title + "\n";
  for (const std::string& line : lines) out += "  " + line + "\n";
  return out;
}

std::string loads_line(const plan::Plan& plan) {
  std::string out;
  for (std::size_t l = 0; l < 3; ++l) {
    out += (l == 0 ? "" : "; ") + std::string(plan::load_words(static_cast<plan::Load>(l))) + " " +
           std::to_string((plan.solution.evaluation.loads[l] + 999) / 1000) + " of at most " +
           std::to_string(plan.problem.ceiling[l] / 1000);
  }
  return out;
}

std::string no_session_text(const session::Evening& evening) {
  return "\nNo session tonight.\n" + list("Why", evening.remarks) + "\nLocal rules and licensed practice come first.\n";
}

std::string infeasible_text(const PlanAnswer& answer, const catalogue::Catalogue& catalogue) {
  std::vector<std::string> demands;
  for (const plan::Demand& demand : answer.plan.conflict.demands) demands.push_back(plan::words(demand, catalogue));
  return list("No session keeps all of these:", demands) +
         "\nWay out: " + plan::words(answer.plan.conflict.ways_out, catalogue) + ".\n";
}

}  // namespace

std::string plan_text(const PlanAnswer& answer, const EveningMatter& matter) {
  std::string out = heading(matter);
  if (!matter.evening.no_session.empty()) return out + no_session_text(matter.evening);
  if (answer.plan.outcome == plan::Outcome::kInfeasible) return out + infeasible_text(answer, matter.catalogue);
  out += "Done by " + door::clock_time(matter.evening, answer.time.simulated_median) + ", nine nights in ten by " +
         door::clock_time(matter.evening, answer.time.nine_in_ten) + ". Players move " +
         std::to_string(answer.time.moving_permille / 10) + " % of the time.\n\n";
  out += session_rows(answer, matter);
  out += list("Different tonight", matter.evening.remarks);
  const std::vector<door::ReasonedChanges> changes = door::changes_by_reason(answer.plan, matter);
  if (changes.empty()) out += "\nThe routine as it stands: nothing changed.\n";
  for (const door::ReasonedChanges& group : changes) {
    out += list("Changed from the routine: " + group.why, group.lines);
  }
  std::vector<std::string> uncovered;
  for (const plan::Uncovered& family : answer.plan.uncovered) {
    uncovered.push_back(matter.catalogue.family(family.family).name + ": " +
                        plan::words(family.cure, matter.catalogue));
  }
  out += list("Not covered tonight", uncovered);
  std::vector<std::string> prices;
  for (const plan::MinutePrice& price : answer.plan.prices) {
    prices.push_back(std::to_string(price.minutes) + " min more: " + plan::words(price, matter.catalogue));
  }
  out += list("What more time would buy", prices);
  out += "\nLoads: " + loads_line(answer.plan) + ".\n";
  if (!answer.time.best_saving.sentence.empty()) out += "Time: " + answer.time.best_saving.sentence + ".\n";
  const plan::Objective& o = answer.plan.solution.evaluation.objective;
  out += "Proven best for the slot: uncovered " + std::to_string(o.uncovered) + ", shortfall " +
         std::to_string(o.shortfall) + ", changes " + std::to_string(o.changes) + ", preference " +
         std::to_string(o.preference) + "; gap 0.\n";
  out += "Restrictions as known " +
         (matter.restrictions.as_known.empty() ? std::string("never") : matter.restrictions.as_known) +
         "; ask who is sore tonight. Local rules and licensed practice come first.\n";
  return out;
}

}  // namespace lanework::cli
