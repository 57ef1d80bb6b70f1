// A frame from the rows of a table, put in the order of clubs and squads.
#pragma once

#include <algorithm>
#include <functional>
#include <numeric>

#include "core/evidence/mixed/frame.h"
#include "tests/evidence/csv_rows.h"

namespace lanework::evidence {

struct Column {
  std::string name;
  std::function<double(const CsvRow&)> value;
};

inline Column ones() {
  return {"(Intercept)", [](const CsvRow&) { return 1.0; }};
}
inline Column as_it_is(const std::string& name) {
  return {name, [name](const CsvRow& row) { return number(row, name); }};
}
// 1 where the category is this one.
inline Column category(const std::string& name, const std::string& which) {
  return {name + which, [name, which](const CsvRow& row) { return row.at(name) == which ? 1.0 : 0.0; }};
}

struct FrameColumns {
  std::string events;
  std::string hours;  // empty: 1 in every row
  std::string squad;
  std::string club;  // empty: none
  std::vector<Column> fixed;
};

inline Frame frame_of(const std::vector<CsvRow>& rows, const FrameColumns& columns) {
  const auto key = [&](std::size_t i) {
    const std::string club = columns.club.empty() ? "" : rows[i].at(columns.club);
    return club + "\n" + rows[i].at(columns.squad);
  };
  std::vector<std::size_t> order(rows.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return key(a) < key(b); });
  Frame frame;
  for (const Column& column : columns.fixed) frame.names.push_back(column.name);
  for (std::size_t k = 0; k < order.size(); ++k) {
    const CsvRow& row = rows[order[k]];
    for (const Column& column : columns.fixed) frame.design.push_back(column.value(row));
    frame.log_hours.push_back(columns.hours.empty() ? 0 : std::log(number(row, columns.hours)));
    frame.events.push_back(number(row, columns.events));
    const bool last_of_squad = k + 1 == order.size() || key(order[k]) != key(order[k + 1]);
    if (!last_of_squad) continue;
    frame.squad_ends.push_back(frame.rows());
    if (columns.club.empty()) continue;
    const bool last_of_club = k + 1 == order.size() || row.at(columns.club) != rows[order[k + 1]].at(columns.club);
    if (last_of_club) frame.club_ends.push_back(frame.squads());
  }
  return frame;
}

}  // namespace lanework::evidence
