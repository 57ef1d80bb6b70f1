// Dates as spreadsheets export them: ISO, with month names, day or month first, and serial numbers.
// Which of day and month stands first is decided over the whole column; a column that never tells is a
// fault, unless its heading or the lead says so.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/people/roster_sheet.h"

namespace lanework::people {

enum class DateOrder { kAsTheColumnTells, kDayFirst, kMonthFirst };

// Day number 1 of a workbook: 1 January 1900 (with the day 29 February 1900 that never was), or, in
// workbooks that began on early Macs, 2 January 1904.
enum class SerialSystem { k1900, k1904 };

std::optional<Date> date_of_serial(std::int64_t serial, SerialSystem system);

// A roster holds players of these ages (own judgement: wider than the catalogue's 8 to 19, so that one
// guest does not stop the evening).
inline constexpr int kYoungestPlayer = 5;
inline constexpr int kOldestPlayer = 25;

// What a column of dates is read by.
struct DateReading {
  std::string heading;  // as the file writes it
  DateOrder order = DateOrder::kAsTheColumnTells;
  SerialSystem serials = SerialSystem::k1900;
  Date latest;                         // years of two digits are the latest that are not after this day's
  std::function<bool(Date)> accepted;  // is it a day that can be meant?
  std::string accepted_words;          // 'a birth date that makes the player ...'
  std::string order_hint;              // what to do about a column that does not tell its order
  std::string serial_hint;             // what to do about a day number that cannot be meant
  std::string example = "2013-05-31";
  bool accepted_tells_order = false;  // the order that makes every day acceptable is taken, where only one does
};

// The order that these cells tell, of one column or of several that one hand filled in; kAsTheColumnTells where none
// tells, or some tell one order and some the other.
DateOrder order_told_by(const std::vector<SheetCell>& cells, Date latest, const TextForms& forms);

// One value a cell; empty where the cell is blank or at fault. ages: as for read_births.
std::vector<std::optional<Date>> read_dates(const Sheet& sheet, const std::vector<SheetCell>& cells,
                                            const std::vector<std::optional<int>>& ages, const DateReading& reading,
                                            const TextForms& forms, Faults& faults);

struct BirthReading {
  std::string heading;  // as the file writes it
  DateOrder order = DateOrder::kAsTheColumnTells;
  SerialSystem serials = SerialSystem::k1900;
  Date day;  // of the evening: births lie before it, and two-digit years are the latest that do
};

// One value a cell; empty where the cell is blank or at fault. ages: what an age column says, one a cell,
// or an empty list; it only serves to notice a workbook on the 1904 system.
std::vector<std::optional<Date>> read_births(const Sheet& sheet, const std::vector<SheetCell>& cells,
                                             const std::vector<std::optional<int>>& ages, const BirthReading& reading,
                                             const TextForms& forms, Faults& faults);

}  // namespace lanework::people
