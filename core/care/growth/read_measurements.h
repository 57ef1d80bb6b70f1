// The sheet of measurements: one row a player and day. docs/formats/growth.md.
#pragma once

#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/care/growth/growth_person.h"
#include "core/care/growth/growth_table.h"
#include "core/people/sheet_columns.h"

namespace lanework::care::growth {

const people::KnownColumns& measurement_columns();

struct MeasuredPeople {
  std::vector<std::vector<BodyMeasurement>> of;  // as many as people, each by date, ascending
  int rows_not_read = 0;                         // of players whose agreement does not hold, or who are not listed
};

// Rows of a player whose agreement does not hold on the day are counted and not read: not even a fault shows a value.
// Faults, all collected: what cannot be read, two rows of one player and day, and what is not plausible (plausible.h).
Result<MeasuredPeople> read_measurements(const people::Sheet& sheet, const std::vector<GrowthPerson>& people,
                                         const GrowthTable& table, const people::TextForms& forms, Date day);

}  // namespace lanework::care::growth
