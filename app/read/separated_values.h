// Comma-, semicolon- and tab-separated text to rows of cells with their lines.
#pragma once

#include <functional>
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

// The separator is the one under which the sheet reads best, as 'known_headings' counts, or the one that a first line
// 'sep=;' states; of a file that breaks off, the part before.
SeparatedValues read_best_separated(const std::string& file, const std::string& text,
                                    const std::function<int(const people::Sheet&)>& known_headings);

// A first line 'sep=;' as some spreadsheets write it; 0 where there is none.
char stated_separator(std::string_view text);

}  // namespace lanework::read
