#include "tests/report/number_words.h"
#include "tests/report/sample_charts.h"

namespace lanework::report {
namespace {

using Rows = std::vector<std::vector<std::string>>;

std::vector<Column> columns(const std::vector<std::string>& headings) {
  std::vector<Column> columns;
  for (const std::string& heading : headings) columns.push_back({heading, !columns.empty()});
  return columns;
}

Table of(const Intervals& data) {
  Rows rows;
  for (const IntervalRow& row : data.rows) {
    rows.push_back(
        {row.label, decimals(row.estimate, 2), decimals(row.low, 2), row.high ? decimals(*row.high, 2) : "none"});
  }
  return {"", columns({"", "Estimate", "Lower limit", "Upper limit"}), rows};
}

Table of(const Funnel& data) {
  Rows rows;
  for (const FunnelPoint& point : data.points) {
    rows.push_back({point.label, decimals(point.expected, 1), decimals(point.ratio, 2)});
  }
  return {"", columns({"Squad", "Expected", "Seen by expected"}), rows};
}

Table of(const Watch& data) {
  Rows rows;
  for (const WatchedWeek& week : data.weeks) {
    rows.push_back({week.label, decimals(week.events, 0), decimals(week.expected, 1), decimals(week.sum, 1),
                    week.alarm ? "alarm" : ""});
  }
  return {"", columns({"Week from", "Seen", "Expected", "Sum", ""}), rows};
}

Table of(const Curve& data) {
  Rows rows;
  for (const CurvePoint& point : data.points) {
    rows.push_back(
        {decimals(point.value, 1), decimals(point.times, 2), decimals(point.low, 2), decimals(point.high, 2)});
  }
  return {"", columns({"Value", "Times", "Lower limit", "Upper limit"}), rows};
}

Table of(const Shares& data) {
  std::vector<std::string> headings = {"Squad"};
  Rows rows;
  for (const SharesRow& row : data.rows) {
    std::vector<std::string> cells = {row.label};
    for (const Part& part : row.parts) cells.push_back(std::to_string(part.count));
    rows.push_back(cells);
  }
  if (!data.rows.empty()) {
    for (const Part& part : data.rows.front().parts) headings.push_back(part.name);
  }
  return {"", columns(headings), rows};
}

Table of(const Weeks& data) {
  std::vector<std::string> headings = {"Week from"};
  headings.insert(headings.end(), data.settings.begin(), data.settings.end());
  headings.emplace_back("Injuries");
  Rows rows;
  for (const HoursWeek& week : data.weeks) {
    std::vector<std::string> cells = {week.label};
    for (const double hours : week.hours) cells.push_back(decimals(hours, 0));
    cells.push_back(std::to_string(week.events));
    rows.push_back(cells);
  }
  return {"", columns(headings), rows};
}

}  // namespace

Table table_of(const std::string& caption, const ChartData& data) {
  Table table = std::visit([](const auto& kind) { return of(kind); }, data);
  table.caption = caption;
  return table;
}

}  // namespace lanework::report
