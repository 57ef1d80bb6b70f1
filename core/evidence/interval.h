// An estimate's interval, and how sure it is meant to be.
#pragma once

namespace lanework::evidence {

struct Interval {
  double low = 0;
  double high = 0;  // may be infinite
  bool operator==(const Interval&) const = default;
};

// The share of intervals made this way that hold the true value, 0 < level < 1: 0.95 unless a reader asks for another.
inline constexpr double kUsualLevel = 0.95;

}  // namespace lanework::evidence
