// The rows of a model of counts: what was counted, how long it was watched for, and what is known of each row.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace lanework::evidence {

struct Frame {
  std::vector<std::string> names;       // of the columns
  std::vector<double> design;           // [row x columns + column]
  std::vector<double> log_hours;        // by row
  std::vector<double> events;           // by row, whole numbers
  std::vector<std::size_t> squad_ends;  // rows of one squad stand together: one past its last
  std::vector<std::size_t> club_ends;   // squads of one club stand together: one past its last; empty: no clubs

  [[nodiscard]] std::size_t rows() const { return events.size(); }
  [[nodiscard]] std::size_t columns() const { return names.size(); }
  [[nodiscard]] std::size_t squads() const { return squad_ends.size(); }
};

}  // namespace lanework::evidence
