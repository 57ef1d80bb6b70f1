// One row of canonical hours, read in place. Inside this folder only.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/records/season.h"
#include "core/records/split_row.h"
#include "core/records/week_hours.h"

namespace lanework::records {

// Squads by their exact id.
class SquadTable {
 public:
  explicit SquadTable(const std::vector<SquadRecord>& squads);
  // -1 where there is none.
  [[nodiscard]] std::int32_t find(std::string_view id) const;
  [[nodiscard]] const std::string& id(std::int32_t squad) const { return ids_[static_cast<std::size_t>(squad)]; }

 private:
  struct Slot {
    std::uint64_t hash = 0;
    std::int32_t squad = -1;
  };
  std::vector<std::string> ids_;
  std::vector<Slot> slots_;  // a power of two of them, half of them empty or more
};

// ISO dates by their text, without a calendar's arithmetic for each.
class DateTable {
 public:
  explicit DateTable(const Period& period);
  static constexpr int kNoDate = -1'000'000'000;
  // Days since the epoch of exactly ten characters; kNoDate where they are no date.
  [[nodiscard]] int day(const char* text) const;

 private:
  struct Month {
    int first_day = 0;
    int days = 0;
  };
  int first_year_;
  std::vector<Month> months_;
};

// What is at fault in a row: its first bad cell.
struct RowFault {
  HoursColumn column = HoursColumn::kSquad;
  enum class Why { kCell, kSquad, kFuture, kMinutesLack, kPlayersLack, kCells } why = Why::kCell;
  std::string_view cell;
};

class HoursRows {
 public:
  HoursRows(const std::vector<SquadRecord>& squads, const Period& period);
  HoursRows(const HoursRows&) = delete;
  HoursRows& operator=(const HoursRows&) = delete;

  // A row without its line end, summed; the fault where it has one.
  std::optional<RowFault> add(std::string_view row);
  WeekTable& table() { return table_; }

 private:
  struct Usual {
    std::int32_t minutes = -1;
    std::int32_t players = -1;
  };
  Period period_;
  SquadTable squads_;
  DateTable dates_;
  std::vector<std::array<Usual, kSettings>> usual_;  // by squad
  WeekTable table_;
  RowSplitter splitter_;
  HoursCells cells_;  // of the row that is being read
  // Rows of one day often follow each other, and squads in the same order, or a squad itself: what followed the last
  // time (by the squad before plus one, itself at first) is tried before it is looked up.
  std::array<char, 10> last_date_{};
  int last_day_ = DateTable::kNoDate;
  std::size_t last_week_ = 0;
  std::int32_t last_squad_ = -1;
  std::vector<std::int32_t> followers_;

  struct Values {
    std::int32_t squad = 0;
    int setting = 0;
    int minutes = 0;  // negative: an empty cell; so with players and hours
    int players = 0;
    std::int64_t hours = 0;  // in minutes of one player
    int warm_up = 0;
    bool of_one_player = false;
  };
  std::optional<RowFault> read(std::string_view row, Values& out);
  std::int32_t squad_of(std::string_view cell);
  // False where the cell is no date.
  bool take_date(std::string_view cell);
};

}  // namespace lanework::records
