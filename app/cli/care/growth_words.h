// Growth as the lead reads it, and as the restrictions file takes it.
#pragma once

#include <vector>

#include "app/cli/care/lead_answer.h"
#include "core/care/growth/growth_reading.h"
#include "core/care/growth/growth_table.h"

namespace lanework::cli {

struct GrowthMatter {
  Date day;
  care::growth::GrowthTable table;
  std::vector<care::growth::GrowthReading> readings;  // by player, in the order of the sheet
  int rows_not_read = 0;
};

// Of players whose agreement does not hold only that it does not. Exit status 1 where nobody's holds.
LeadAnswer growth_answer(const GrowthMatter& matter);

// As TOML to be put into the club's restrictions: no measure, no reason. Exit status 1 where nobody is spared.
LeadAnswer growth_restrictions(const GrowthMatter& matter);

}  // namespace lanework::cli
