// Separated text with one row of headings to a table of columns, whatever the columns mean.
#pragma once

#include <string>
#include <string_view>

#include "core/base/result.h"
#include "core/evidence/data_table.h"

namespace lanework::read {

// The separator is the one that gives the first row the most cells. Cells without white space at their ends; blank rows
// are passed over. Faults: no heading, a heading twice or empty, a row with more cells than headings, no rows.
Result<evidence::DataTable> read_data_table(const std::string& file, std::string_view bytes);

}  // namespace lanework::read
