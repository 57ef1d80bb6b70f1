// The sheet of screens: player, date, test, side, value. docs/formats/screens.md.
#pragma once

#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/base/result.h"
#include "core/care/screens/screen_tests.h"
#include "core/people/sheet_columns.h"

namespace lanework::care::screens {

enum class Side { kLeft, kRight, kBoth };

// All tries of a player at a test, on a day and a side, as one.
struct ScreenValue {
  std::string player;
  std::size_t test = 0;  // position in ScreenTests::tests
  Side side = Side::kBoth;
  Date date;
  double mean = 0;
  double best = 0;
  int trials = 0;
};

const people::KnownColumns& screen_columns();

// By player, test, side, date. Faults, all collected: cells that cannot be read, tests that are not known, a side where
// there is none and none where there is one, values that the test cannot have.
Result<std::vector<ScreenValue>> read_screen_rows(const people::Sheet& sheet, const ScreenTests& tests,
                                                  const people::TextForms& forms, Date day);

}  // namespace lanework::care::screens
