// Canonical hours (write_season.h) of any length to sums by squad, week and setting, straight from the bytes: no row is
// kept, nothing is allocated for one. The sums are those of the reader of sheets on the same file.
//
//   HoursStream stream("hours.csv", squads, period);
//   while (more) stream.take(piece);
//   Result<WeekTable> table = std::move(stream).finish();
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/records/season.h"
#include "core/records/week_hours.h"

namespace lanework::records {

inline constexpr std::size_t kMostStreamFaults = 1000;        // named; the rest are counted
inline constexpr std::size_t kLongestStreamLine = 1U << 20U;  // bytes

class HoursStream {
 public:
  // squads: as canonical squads.csv gives them, whose usual minutes and players stand in for empty cells.
  HoursStream(std::string file, const std::vector<SquadRecord>& squads, const Period& period);
  HoursStream(HoursStream&&) noexcept;
  HoursStream& operator=(HoursStream&&) noexcept;
  ~HoursStream();

  // The next bytes of the file; they may end anywhere in a row.
  void take(std::string_view piece);
  // Faults: a first line that is not the canonical headings, and one a row for the first cell in it that is not
  // canonical, names no squad, or leaves open what the squad does not say either.
  Result<WeekTable> finish() &&;

 private:
  class Rows;
  std::unique_ptr<Rows> rows_;
  std::string begun_;  // a row whose end has not come yet
};

}  // namespace lanework::records
