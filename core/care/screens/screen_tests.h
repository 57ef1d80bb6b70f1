// Screens: generic tests of balance, hopping, holding and alignment, as data (catalogue/care/screens.toml). Every
// number of a norm says whom it was measured on; where nothing was published there is none.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/document.h"
#include "core/base/result.h"

namespace lanework::care::screens {

struct Norm {
  std::string words;  // 'eyes open 43 s (best 45 s)'
  std::string of;     // 'adults of 18 to 39'
  bool unverified = false;
  std::vector<std::string> sources;
};

// A difference between two days that measuring alone makes now and then; only more than it is told as a change.
struct DetectableChange {
  double value = 0;  // in the test's unit
  std::string of;    // whom it was measured on
  int trials = 1;    // it holds for the mean of so many
  std::vector<std::string> sources;
};

// Which way is the stronger, longer, straighter; kZero: nearer to 0 from either side.
enum class Wanted { kMore, kLess, kZero };

struct ScreenTest {
  std::string key;   // 'hop-for-distance'
  std::string name;  // 'Single-leg hop for distance'
  std::string unit;  // 's', 'cm', 'degrees', '%'
  Wanted wanted = Wanted::kMore;
  bool sides = false;       // left and right
  bool symmetry = false;    // the weaker side is set against the stronger
  bool knee_angle = false;  // in degrees of knee flexion, 0 is straight; may be handed in as the included angle
  double least = 0;         // what a value may be
  double most = 0;
  std::string protocol;  // in our own short words
  std::string caution;   // what it cannot say; may be empty
  std::optional<DetectableChange> change;
  std::vector<Norm> norms;
  std::vector<std::string> sources;
};

struct ScreenTests {
  std::vector<ScreenTest> tests;
  double symmetry_prompt_percent = 90;  // below it: worth a second look
  std::string symmetry_caution;
  std::vector<std::string> symmetry_sources;

  [[nodiscard]] const ScreenTest* find(const std::string& key) const;
};

// Faults: keys that lack or are not known, two tests of one key, numbers outside their limits.
Result<ScreenTests> read_screen_tests(const Document& document);

}  // namespace lanework::care::screens
