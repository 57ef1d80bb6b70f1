// The lexicographic objective as one packed whole number: uncovered families, then shortfall, then changes,
// then preference. Each level stays below its range, so that comparing packed values compares level by
// level. The packed value stays below 2^53 and is therefore exact in a double, in which the kernel's loops
// are vectorised on every processor and in WebAssembly.
#pragma once

#include <cstdint>

namespace lanework::plan {

struct Objective {
  std::int64_t uncovered = 0;   // required families with no drill
  std::int64_t shortfall = 0;   // weighted quarter-targets missing against the routine's own doses
  std::int64_t changes = 0;     // weighted departures from the routine
  std::int64_t preference = 0;  // familiarity and small doses of anything new
  bool operator==(const Objective&) const = default;
};

inline constexpr std::int64_t kPreferenceRange = std::int64_t{1} << 13;
inline constexpr std::int64_t kChangesRange = std::int64_t{1} << 13;
inline constexpr std::int64_t kShortfallRange = std::int64_t{1} << 18;
inline constexpr std::int64_t kUncoveredRange = std::int64_t{1} << 6;

inline constexpr std::int64_t kChangesUnit = kPreferenceRange;
inline constexpr std::int64_t kShortfallUnit = kChangesUnit * kChangesRange;
inline constexpr std::int64_t kUncoveredUnit = kShortfallUnit * kShortfallRange;
static_assert(kUncoveredUnit * kUncoveredRange <= (std::int64_t{1} << 53), "packed values must be exact in a double");

constexpr std::int64_t packed(const Objective& o) {
  return o.uncovered * kUncoveredUnit + o.shortfall * kShortfallUnit + o.changes * kChangesUnit + o.preference;
}

// REQUIRES: value >= 0.
constexpr Objective unpacked(std::int64_t value) {
  return {value / kUncoveredUnit, value / kShortfallUnit % kShortfallRange, value / kChangesUnit % kChangesRange,
          value % kPreferenceRange};
}

}  // namespace lanework::plan
