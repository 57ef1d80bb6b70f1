// A sheet: the cells of a spreadsheet export as text, each with the line of the file it starts on, and
// what the readers of a roster share. Nothing is interpreted here.
#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"

namespace lanework::people {

struct SheetCell {
  std::string text;  // UTF-8
  int line = 0;      // physical line of the file, also after quoted line breaks
};

struct SheetRow {
  int line = 0;
  std::vector<SheetCell> cells;
};

struct Sheet {
  std::string file;
  std::vector<SheetRow> rows;
};

// How text is compared. Left empty, only A to Z are folded; the native program folds every script.
struct TextForms {
  std::function<std::string(std::string_view)> same;   // the same name written twice: normal form, case folded
  std::function<std::string(std::string_view)> loose;  // headings and units: accents dropped as well
};

std::string same_form(const TextForms& forms, std::string_view text);
std::string loose_form(const TextForms& forms, std::string_view text);

// Without white space (also the no-break and ideographic kinds) at either end; runs inside become one blank.
std::string tidy(std::string_view text);

// A fault in one cell, under the heading as the file writes it.
Fault cell_fault(FaultCode code, const Sheet& sheet, const SheetCell& cell, const std::string& heading,
                 std::string expected, std::string hint = {});

// A fault of a whole row, or with line 0 of the sheet.
Fault row_fault(FaultCode code, const Sheet& sheet, int line, std::string found, std::string expected,
                std::string hint = {});

}  // namespace lanework::people
