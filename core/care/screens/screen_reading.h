// What a player's screens say: today's values, the weaker side against the stronger, and a change where it is larger
// than measuring alone makes. Prompts and descriptions; never a verdict, never a clearance.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/care/screens/read_screen_rows.h"
#include "core/care/screens/screen_tests.h"

namespace lanework::care::screens {

enum class ChangeWords {
  kNotJudged,    // nobody published what measuring alone makes of this test
  kTooFewTries,  // the published figure is of a mean of more tries than these
  kWithin,       // no more than measuring alone makes: no change is told
  kBetter,       // beyond it, the way that is wanted
  kWorse         // beyond it, the other way
};

// Between two days of one side. Only beyond the detectable change is there a difference to be told.
ChangeWords judge_change(const ScreenTest& test, const ScreenValue& before, const ScreenValue& after);

struct SideReading {
  Side side = Side::kBoth;
  std::vector<ScreenValue> values;                    // by date, ascending
  ChangeWords since_last = ChangeWords::kNotJudged;   // of the last two days; two values or more
  ChangeWords since_first = ChangeWords::kNotJudged;  // of the first and the last day; three values or more
};

struct SymmetryReading {
  Date date;  // the last on which both sides were tested
  double percent = 100;
  bool prompt = false;  // below the prompt: worth a second look, no more
};

struct TestReading {
  std::size_t test = 0;
  std::vector<SideReading> sides;
  std::optional<SymmetryReading> symmetry;
};

struct ScreenReading {
  std::string player;
  std::vector<TestReading> tests;
};

// values: as read_screen_rows gives them.
std::vector<ScreenReading> read_screens(const ScreenTests& tests, const std::vector<ScreenValue>& values);

}  // namespace lanework::care::screens
