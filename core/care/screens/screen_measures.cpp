#include "core/care/screens/screen_measures.h"

#include <algorithm>
#include <cmath>

namespace lanework::care::screens {
namespace {

constexpr double kPercent = 100;
constexpr double kTwoSided95 = 1.96;

}  // namespace

double limb_symmetry_percent(double tested, double other, Wanted wanted) {
  return kPercent * (wanted == Wanted::kMore ? tested / other : other / tested);
}

double weaker_side_percent(double left, double right, Wanted wanted) {
  return std::min(limb_symmetry_percent(left, right, wanted), limb_symmetry_percent(right, left, wanted));
}

bool better(Wanted wanted, double before, double after) {
  switch (wanted) {
    case Wanted::kMore:
      return after > before;
    case Wanted::kLess:
      return after < before;
    case Wanted::kZero:
      return std::abs(after) < std::abs(before);
  }
  return false;
}

double detectable_change_of(double standard_error) { return kTwoSided95 * std::sqrt(2.0) * standard_error; }

}  // namespace lanework::care::screens
