// The sheet of who may be measured: agreement, birth, sex, parents. docs/formats/growth.md.
#pragma once

#include <vector>

#include "core/base/result.h"
#include "core/care/growth/growth_person.h"
#include "core/care/growth/growth_table.h"
#include "core/people/sheet_columns.h"

namespace lanework::care::growth {

const people::KnownColumns& growth_people_columns();

// One row a player. Of a player whose agreement does not hold on the day, nothing but the agreement and the birth date
// is read. Every fault is collected.
Result<std::vector<GrowthPerson>> read_growth_people(const people::Sheet& sheet, const GrowthTable& table,
                                                     const people::TextForms& forms, Date day);

}  // namespace lanework::care::growth
