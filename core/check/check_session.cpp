#include "core/check/check_session.h"

#include "core/check/judge.h"
#include "core/check/privacy.h"
#include "core/check/read_matter.h"
#include "core/check/refute.h"
#include "core/check/stated.h"
#include "core/check/timing.h"

namespace lanework::check {
namespace {

std::string text_of(const Node& table, std::string_view key) {
  const Node* node = table.find(key);
  return node != nullptr && node->kind == Node::Kind::kText ? node->text : "";
}

// The answer says that nothing can be done tonight.
void judge_infeasible(const Node& answer, const Matter& matter, Report& report) {
  std::vector<Violation>& violations = report.violations;
  const Node* items = answer.find("items");
  if (items != nullptr && !items->items.empty()) {
    violations.push_back({"answer-form", "items", "a session", "none where nothing can be done"});
  }
  const Node* reasons = answer.find("infeasible");
  const Node* conflict = reasons == nullptr ? nullptr : reasons->find("conflict");
  if (conflict == nullptr || conflict->items.empty() || text_of(*reasons, "way_out").empty()) {
    violations.push_back({"answer-form", "infeasible", "no conflict or no way out", "both"});
  }
  const Selection session = witness(matter);
  if (session.empty()) return;
  std::string names;
  for (const Pick& pick : session) names += (names.empty() ? "" : ", ") + pick.drill->id;
  violations.push_back({"wrongly-infeasible", "outcome", "infeasible", "a session, such as: " + names});
}

// Unknown keys are the door's to refuse; an edited plan has few.
std::vector<NamedItem> edited_items(const Document& edited, Faults& faults) {
  TableReader table(edited.file, &edited.root, "", faults);
  // A house routine may be judged as it stands.
  for (const char* key : {"id", "name", "note"}) table.text_or(key, "");
  table.integer_or("minutes", 5, 1, 600);
  table.table("ages");
  std::vector<NamedItem> out;
  for (TableReader& row : table.tables("drill")) {
    NamedItem item;
    item.drill = row.text("id");
    item.rung = row.text("rung");
    item.step.sets = static_cast<int>(row.integer("sets", 1, 20));
    item.step.amount = static_cast<int>(row.integer("amount", 1, 600));
    item.where = "drill " + std::to_string(out.size() + 1) + " (" + item.drill + ")";
    row.finish();
    out.push_back(std::move(item));
  }
  if (out.empty() && faults.empty()) table.fault(FaultCode::kMissing, "drill", "nothing", "tables [[drill]]");
  table.finish();
  return out;
}

}  // namespace

Result<Report> check_session(const Node& request, const Node& answer) {
  if (text_of(answer, "answer") != "plan") {
    return Fault{FaultCode::kContradiction,
                 {"answer", 0, 0, "answer"},
                 quote(text_of(answer, "answer")),
                 "the answer of a plan",
                 {}};
  }
  const Result<Matter> read = read_matter(request);
  if (!read) return read.faults();
  const Matter& matter = read.value();
  Report report;
  report.infeasible = text_of(answer, "outcome") == "infeasible";
  const std::vector<NamedItem> items = named_items(answer, report.violations);
  const Selection selection = existing(items, matter, report.violations);
  recompute(selection, matter, report);
  judge_frame(answer, matter, report, report.violations);
  if (report.infeasible) {
    judge_infeasible(answer, matter, report);
  } else {
    judge(selection, matter, true, report.violations);
    if (selection.size() == items.size()) judge_stated(answer, selection, matter, report, report.violations);
  }
  judge_privacy(answer, *request.find("catalogue"), matter.secrets, report.violations);
  return report;
}

Result<Report> check_edited(const Node& request, const Document& edited) {
  Faults faults;
  const std::vector<NamedItem> items = edited_items(edited, faults);
  if (!faults.empty()) return faults;
  const Result<Matter> matter = read_matter(request);
  if (!matter) return matter.faults();
  Report report;
  const Selection selection = existing(items, matter.value(), report.violations);
  recompute(selection, matter.value(), report);
  judge(selection, matter.value(), false, report.violations);
  return report;
}

Result<Report> check_plan(const Node& request, const Document& plan) {
  if (plan.root.find("answer") != nullptr) return check_session(request, plan.root);
  return check_edited(request, plan);
}

}  // namespace lanework::check
