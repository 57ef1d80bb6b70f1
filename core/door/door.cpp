#include "core/door/door.h"

#include "core/door/check_drill.h"
#include "core/door/figure_answer.h"
#include "core/door/plan_answer.h"
#include "core/door/slip_answer.h"

namespace lanework::door {
namespace {

Result<EveningMatter> matter_of(const Node& request, const Held& held) {
  auto documents = documents_of(request);
  if (!documents) return documents.faults();
  if (request.find("held") == nullptr) return read_evening(std::move(documents).value());
  auto catalogue = catalogue_held(request, held);
  if (!catalogue) return catalogue.faults();
  return read_evening(std::move(documents).value(), std::move(catalogue).value());
}

Result<Node> plan_of(const Node& request, Spread spread, const Held& held) {
  const auto matter = matter_of(request, held);
  if (!matter) return matter.faults();
  plan::KernelWorkspace workspace;
  return to_node(answer_plan(matter.value(), workspace, spread), matter.value());
}

// Says no time, so none is simulated.
Result<Node> slip_of(const Node& request, const Held& held) {
  const auto matter = matter_of(request, held);
  if (!matter) return matter.faults();
  plan::KernelWorkspace workspace;
  const PlanAnswer answer = answer_plan(matter.value(), workspace, Spread::kFormula);
  const auto made = answer_slip(matter.value(), answer);
  if (!made) return made.faults();
  return to_node(made.value(), matter.value(), answer);
}

Result<Node> answer(const Document& document, Held& held) {
  Faults faults;
  TableReader reader(document.file, &document.root, "", faults);
  const int which = reader.word("request", {"plan", "slip", "figure", "hold", "check-drill"});
  const int spread = reader.word("spread", {"simulated", "formula"}, 0);
  if (!faults.empty()) return faults;
  if (which == 4) return check_drill(document, held);
  if (which == 3) return hold(document, held);
  if (which == 2) return answer_figure(document);
  if (which == 1) return slip_of(document.root, held);
  return plan_of(document.root, spread == 1 ? Spread::kFormula : Spread::kSimulated, held);
}

}  // namespace

Node faults_node(const Faults& faults) {
  Node list = Node::make_array();
  for (const Fault& fault : faults) {
    Node node = Node::make_table();
    node.set("code", Node::make_text(fault_row(fault.code).key));
    node.set("file", Node::make_text(fault.place.file));
    node.set("line", Node::make_integer(fault.place.line));
    node.set("column", Node::make_integer(fault.place.column));
    node.set("field", Node::make_text(fault.place.field));
    node.set("found", Node::make_text(fault.found));
    node.set("expected", Node::make_text(fault.expected));
    node.set("hint", Node::make_text(fault.hint));
    node.set("sentence", Node::make_text(to_line(fault)));
    list.items.push_back(std::move(node));
  }
  Node out = Node::make_table();
  out.set("answer", Node::make_text("faults"));
  out.set("faults", std::move(list));
  return out;
}

std::string run(std::string_view request, Held& held) {
  const auto document = parse_json("request", request);
  if (!document) return to_json(faults_node(document.faults()));
  const auto out = answer(document.value(), held);
  return to_json(out ? out.value() : faults_node(out.faults()));
}

std::string run(std::string_view request) {
  Held nothing;
  return run(request, nothing);
}

}  // namespace lanework::door
