// Hours, sessions and warm-ups of each squad, week and setting: what rates and monitoring start from.
#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "core/records/season.h"

namespace lanework::records {

struct WeekHours {
  PlayerMinutes hours;
  std::int32_t sessions = 0;         // of the whole squad
  std::int32_t player_sessions = 0;  // of single players
  // Of both kinds, by WarmUp; the last is unknown.
  std::array<std::int32_t, kWarmUps + 1> warm_ups{};
  bool operator==(const WeekHours&) const = default;
};

class WeekTable {
 public:
  WeekTable(std::size_t squads, const Period& period)
      : weeks_(static_cast<std::size_t>(weeks_in(period))), cells_(squads * weeks_ * kSettings) {}

  [[nodiscard]] std::size_t weeks() const { return weeks_; }
  // squad: position in Season::squads; week: as week_of counts.
  [[nodiscard]] const WeekHours& at(std::size_t squad, std::size_t week, Setting setting) const {
    return cells_[(squad * weeks_ + week) * kSettings + static_cast<std::size_t>(setting)];
  }
  WeekHours& at(std::size_t squad, std::size_t week, Setting setting) {
    return cells_[(squad * weeks_ + week) * kSettings + static_cast<std::size_t>(setting)];
  }

  std::int64_t rows = 0;                 // summed here
  std::int64_t rows_outside_period = 0;  // met by a stream and left out
  bool operator==(const WeekTable&) const = default;

 private:
  std::size_t weeks_;
  std::vector<WeekHours> cells_;
};

// Of a season that was read. Rows outside the period are not in it, nor counted.
WeekTable hours_by_week(const Season& season);

}  // namespace lanework::records
