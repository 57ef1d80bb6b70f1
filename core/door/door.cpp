#include "core/door/door.h"

#include "core/door/figure_answer.h"
#include "core/door/plan_answer.h"
#include "core/door/slip_answer.h"

namespace lanework::door {
namespace {

Result<Node> plan_or_slip(const Node& request, bool slip) {
  auto documents = documents_of(request);
  if (!documents) return documents.faults();
  auto matter = read_evening(std::move(documents).value());
  if (!matter) return matter.faults();
  plan::KernelWorkspace workspace;
  const PlanAnswer answer = answer_plan(matter.value(), workspace);
  if (!slip) return to_node(answer, matter.value());
  const auto made = answer_slip(matter.value(), answer);
  if (!made) return made.faults();
  return to_node(made.value(), matter.value(), answer);
}

Result<Node> answer(const Document& document) {
  Faults faults;
  TableReader reader(document.file, &document.root, "", faults);
  const int which = reader.word("request", {"plan", "slip", "figure"});
  if (!faults.empty()) return faults;
  if (which == 2) return answer_figure(document);
  return plan_or_slip(document.root, which == 1);
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

std::string run(std::string_view request) {
  const auto document = parse_json("request", request);
  if (!document) return to_json(faults_node(document.faults()));
  const auto out = answer(document.value());
  return to_json(out ? out.value() : faults_node(out.faults()));
}

}  // namespace lanework::door
