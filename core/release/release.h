// One release as it was given out, with what was counted for it.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "core/release/compared.h"
#include "core/release/counts.h"
#include "core/release/period.h"
#include "core/release/planned.h"

namespace lanework::release {

inline constexpr const char* kHidden = "hidden, fewer than 5 or needed to hide one";

struct Release {
  std::int64_t number = 0;  // from 1
  Period period;
  std::string club;
  std::string made;                           // the receiver's clock with its offset
  Rows rows;                                  // names as they were
  Counts whole;                               // of the period: pieces that were released before count as they were then
  Counts own;                                 // of its days that no earlier release had
  std::optional<PlannedBySquad> planned;      // of the period, as counted; empty: no calendar, or a piece that had none
  std::optional<PlannedBySquad> planned_own;  // of the days of 'own'
  std::string asked;                          // of the board, in the lead's own words; may be empty
  std::optional<Compared> compared;
  bool silent = false;                                // nothing at all is said of injuries
  std::array<std::set<std::string>, kTables> hidden;  // keys of each table
  std::vector<std::string> remarks;

  [[nodiscard]] bool shows(Table table, const std::string& key) const {
    return !silent && hidden[static_cast<std::size_t>(table)].count(key) == 0;
  }
};

}  // namespace lanework::release
