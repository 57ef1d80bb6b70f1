#include "core/care/screens/screen_reading.h"

#include <cmath>

#include "core/care/screens/screen_measures.h"

namespace lanework::care::screens {
namespace {

void judge(const ScreenTest& test, SideReading& side) {
  const std::size_t count = side.values.size();
  if (count >= 2) side.since_last = judge_change(test, side.values[count - 2], side.values[count - 1]);
  if (count >= 3) side.since_first = judge_change(test, side.values.front(), side.values.back());
}

// The last day on which both sides were tested.
std::optional<SymmetryReading> symmetry_of(const ScreenTests& tests, const TestReading& reading) {
  const ScreenTest& test = tests.tests[reading.test];
  if (!test.symmetry || reading.sides.size() != 2) return {};
  const std::vector<ScreenValue>& left = reading.sides[0].values;
  const std::vector<ScreenValue>& right = reading.sides[1].values;
  for (std::size_t i = left.size(); i-- > 0;) {
    for (const ScreenValue& other : right) {
      if (other.date != left[i].date || left[i].mean <= 0 || other.mean <= 0) continue;
      SymmetryReading out;
      out.date = other.date;
      out.percent = weaker_side_percent(left[i].mean, other.mean, test.wanted);
      out.prompt = out.percent < tests.symmetry_prompt_percent;
      return out;
    }
  }
  return {};
}

}  // namespace

ChangeWords judge_change(const ScreenTest& test, const ScreenValue& before, const ScreenValue& after) {
  if (!test.change) return ChangeWords::kNotJudged;
  if (before.trials < test.change->trials || after.trials < test.change->trials) return ChangeWords::kTooFewTries;
  if (std::abs(after.mean - before.mean) <= test.change->value) return ChangeWords::kWithin;
  return better(test.wanted, before.mean, after.mean) ? ChangeWords::kBetter : ChangeWords::kWorse;
}

std::vector<ScreenReading> read_screens(const ScreenTests& tests, const std::vector<ScreenValue>& values) {
  std::vector<ScreenReading> out;
  for (const ScreenValue& value : values) {
    if (out.empty() || out.back().player != value.player) out.push_back({value.player, {}});
    std::vector<TestReading>& of_player = out.back().tests;
    if (of_player.empty() || of_player.back().test != value.test) of_player.push_back({value.test, {}, {}});
    std::vector<SideReading>& sides = of_player.back().sides;
    if (sides.empty() || sides.back().side != value.side) sides.push_back({value.side, {}});
    sides.back().values.push_back(value);
  }
  for (ScreenReading& player : out) {
    for (TestReading& test : player.tests) {
      for (SideReading& side : test.sides) judge(tests.tests[test.test], side);
      test.symmetry = symmetry_of(tests, test);
    }
  }
  return out;
}

}  // namespace lanework::care::screens
