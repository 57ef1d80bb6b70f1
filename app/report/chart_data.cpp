#include "app/report/chart_data.h"

#include <initializer_list>
#include <utility>

namespace lanework::report {
namespace {

Node text(const std::string& value) { return Node::make_text(value); }
Node number(double value) { return Node::make_real(value); }

using Entry = std::pair<const char*, Node>;

Node table(std::initializer_list<Entry> entries) {
  Node node = Node::make_table();
  for (const auto& [key, value] : entries) node.set(key, value);
  return node;
}

template <class T, class Make>
Node list(const std::vector<T>& values, Make make) {
  Node node = Node::make_array();
  for (const T& value : values) node.items.push_back(make(value));
  return node;
}

Node row_of(const IntervalRow& row) {
  Node node = table({{"label", text(row.label)}, {"estimate", number(row.estimate)}, {"low", number(row.low)}});
  if (row.high) node.set("high", number(*row.high));
  if (!row.note.empty()) node.set("note", text(row.note));
  return node;
}

Node point_of(const FunnelPoint& point) {
  return table({{"label", text(point.label)}, {"expected", number(point.expected)}, {"ratio", number(point.ratio)}});
}

Node line_of(const FunnelLine& line) {
  return table({{"expected", number(line.expected)},
                {"inner_low", number(line.inner_low)},
                {"inner_high", number(line.inner_high)},
                {"outer_low", number(line.outer_low)},
                {"outer_high", number(line.outer_high)}});
}

Node week_of(const WatchedWeek& week) {
  return table({{"label", text(week.label)},
                {"events", number(week.events)},
                {"expected", number(week.expected)},
                {"sum", number(week.sum)},
                {"alarm", Node::make_boolean(week.alarm)}});
}

Node value_of(const CurvePoint& point) {
  return table({{"value", number(point.value)},
                {"times", number(point.times)},
                {"low", number(point.low)},
                {"high", number(point.high)}});
}

Node step_of(const CurveHours& step) { return table({{"value", number(step.value)}, {"hours", number(step.hours)}}); }

Node part_of(const Part& part) { return table({{"name", text(part.name)}, {"count", Node::make_integer(part.count)}}); }

Node shares_of(const SharesRow& row) {
  return table({{"label", text(row.label)}, {"parts", list(row.parts, part_of)}});
}

Node hours_of(const HoursWeek& week) {
  return table(
      {{"label", text(week.label)}, {"hours", list(week.hours, number)}, {"events", Node::make_integer(week.events)}});
}

Node node_of(const Intervals& data) {
  Node node = table({{"kind", text("intervals")}, {"x_title", text(data.x_title)}, {"rows", list(data.rows, row_of)}});
  if (data.reference) {
    node.set("reference", table({{"value", number(data.reference->value)}, {"label", text(data.reference->label)}}));
  }
  if (data.log) node.set("log", Node::make_boolean(true));
  return node;
}

Node node_of(const Funnel& data) {
  return table({{"kind", text("funnel")},
                {"x_title", text(data.x_title)},
                {"y_title", text(data.y_title)},
                {"inner_name", text(data.inner_name)},
                {"outer_name", text(data.outer_name)},
                {"points", list(data.points, point_of)},
                {"lines", list(data.lines, line_of)}});
}

Node node_of(const Watch& data) {
  return table({{"kind", text("watch")},
                {"events_title", text(data.events_title)},
                {"sum_title", text(data.sum_title)},
                {"weeks", list(data.weeks, week_of)},
                {"decision", number(data.decision)}});
}

Node node_of(const Curve& data) {
  Node node = table({{"kind", text("curve")},
                     {"x_title", text(data.x_title)},
                     {"y_title", text(data.y_title)},
                     {"reference_label", text(data.reference_label)},
                     {"points", list(data.points, value_of)},
                     {"hours", list(data.hours, step_of)}});
  if (data.log) node.set("log", Node::make_boolean(true));
  return node;
}

Node node_of(const Shares& data) { return table({{"kind", text("shares")}, {"rows", list(data.rows, shares_of)}}); }

Node node_of(const Weeks& data) {
  return table({{"kind", text("weeks")},
                {"hours_title", text(data.hours_title)},
                {"events_title", text(data.events_title)},
                {"settings", list(data.settings, text)},
                {"weeks", list(data.weeks, hours_of)}});
}

}  // namespace

Node to_node(const std::string& id, const ChartData& data) {
  Node node = std::visit([](const auto& kind) { return node_of(kind); }, data);
  node.set("id", text(id));
  return node;
}

}  // namespace lanework::report
