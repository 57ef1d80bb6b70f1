// Comma-, semicolon- and tab-separated text to rows of cells with their lines.
#pragma once

#include <string>
#include <string_view>

#include "core/base/result.h"
#include "core/people/roster_sheet.h"

namespace lanework::read {

struct SeparatedValues {
  people::Sheet sheet;  // the rows before the fault, where there is one
  Faults faults;
};

// Quoted cells may hold separators, doubled quotation marks and line breaks. Faults: a quoted cell that
// never closes, and text behind a closing quotation mark. Rows without any cell are dropped.
SeparatedValues read_separated_values(const std::string& file, std::string_view text, char separator);

// A first line 'sep=;' as some spreadsheets write it; 0 where there is none.
char stated_separator(std::string_view text);

}  // namespace lanework::read
