// A report as text and as JSON.
#include "core/check/check_session.h"

namespace lanework::check {
namespace {

Node text(const std::string& value) { return Node::make_text(value); }
Node number(std::int64_t value) { return Node::make_integer(value); }

Node table(std::vector<std::pair<std::string, Node>> entries) {
  Node node = Node::make_table();
  for (auto& [key, value] : entries) node.set(std::move(key), std::move(value));
  return node;
}

template <class T, class Make>
Node list(const std::vector<T>& values, Make make) {
  Node node = Node::make_array();
  for (const T& value : values) node.items.push_back(make(value));
  return node;
}

}  // namespace

std::string to_line(const Violation& violation) {
  return violation.where + ": found " + violation.found + ", allowed " + violation.allowed + " [" + violation.rule +
         "]";
}

Node to_node(const Report& report) {
  Node node = Node::make_table();
  node.set("answer", text("plan-check"));
  node.set("version", number(1));
  node.set("ok", Node::make_boolean(report.ok()));
  node.set("outcome", text(report.infeasible ? "infeasible" : "session"));
  node.set(
      "violations", list(report.violations, [](const Violation& v) {
        return table(
            {{"rule", text(v.rule)}, {"where", text(v.where)}, {"found", text(v.found)}, {"allowed", text(v.allowed)}});
      }));
  node.set("objective", table({{"uncovered", number(report.levels.uncovered)},
                               {"shortfall", number(report.levels.shortfall)},
                               {"changes", number(report.levels.changes)},
                               {"preference", number(report.levels.preference)}}));
  node.set("turnout", number(report.turnout));
  node.set("slot_seconds", number(report.slot_seconds));
  node.set("margin_seconds", number(report.margin_seconds));
  node.set("planned_seconds", number(report.planned_seconds));
  node.set("gathering_seconds", number(report.gathering_seconds));
  node.set("items", list(report.items, [](const ItemReport& item) {
             return table({{"drill", text(item.drill)},
                           {"name", text(item.name)},
                           {"rung_words", text(item.rung_words)},
                           {"dose", text(item.dose_words)},
                           {"rest_seconds", number(item.rest_seconds)},
                           {"change_seconds", number(item.change_seconds)},
                           {"takes_seconds", number(item.takes_seconds)},
                           {"starts_seconds", number(item.starts_seconds)}});
           }));
  node.set("changes", list(report.changes, [](const Departure& change) {
             return table({{"kind", text(change.kind)},
                           {"drill", text(change.drill)},
                           {"from", text(change.from)},
                           {"to", text(change.to)}});
           }));
  node.set("uncovered", list(report.uncovered, [](const std::string& family) { return text(family); }));
  node.set(
      "loads", list(report.loads, [](const LoadReport& load) {
        return table({{"load", text(load.load)}, {"planned", number(load.planned)}, {"ceiling", number(load.ceiling)}});
      }));
  return node;
}

}  // namespace lanework::check
