// Prices of loads in whole numbers, rounded so that what they take off is never more than what their ceilings give
// back: a bound at any prices stays a bound.
#pragma once

#include <cmath>
#include <cstdint>

#include "core/block/problem.h"

namespace lanework::block {

// 2^-12 of a fine point a unit of load.
inline constexpr int kLoadShift = 12;

// From points a ceiling. A ceiling of 0 leaves nothing to be priced.
inline std::int64_t unit_price(double points, int ceiling) {
  if (points <= 0 || ceiling <= 0) return 0;
  return std::llround(points * kFine * (1 << kLoadShift) / ceiling);
}

// Fine points that a ceiling adds to the bound: never less than the most that its price takes off.
inline std::int64_t ceiling_constant(std::int64_t unit, int ceiling) {
  const std::int64_t product = unit * ceiling;
  return (product + (1 << kLoadShift) - 1) >> kLoadShift;
}

// Fine points that a load takes off.
inline std::int64_t load_cost(std::int64_t unit, int load) { return (unit * load) >> kLoadShift; }

}  // namespace lanework::block
