// Units as types: whole numbers of one unit each, so that seconds cannot be added to metres.
// User units stand outside, scaled integers inside; the conversion happens once, at the edge.
#pragma once

#include <compare>
#include <cstdint>

namespace lanework {

template <class Tag>
struct Quantity {
  std::int64_t count = 0;

  constexpr Quantity() = default;
  constexpr explicit Quantity(std::int64_t n) : count(n) {}
  constexpr auto operator<=>(const Quantity&) const = default;
  constexpr Quantity& operator+=(Quantity other) {
    count += other.count;
    return *this;
  }
  constexpr Quantity& operator-=(Quantity other) {
    count -= other.count;
    return *this;
  }
  friend constexpr Quantity operator+(Quantity a, Quantity b) { return Quantity(a.count + b.count); }
  friend constexpr Quantity operator-(Quantity a, Quantity b) { return Quantity(a.count - b.count); }
  friend constexpr Quantity operator*(Quantity a, std::int64_t n) { return Quantity(a.count * n); }
  friend constexpr Quantity operator*(std::int64_t n, Quantity a) { return a * n; }
};

using Milliseconds = Quantity<struct MillisecondsTag>;
using Seconds = Quantity<struct SecondsTag>;
using Millimetres = Quantity<struct MillimetresTag>;
using MillimetresPerSecond = Quantity<struct MillimetresPerSecondTag>;
using Contacts = Quantity<struct ContactsTag>;
using Repetitions = Quantity<struct RepetitionsTag>;
using Metres = Quantity<struct MetresTag>;

constexpr Milliseconds to_milliseconds(Seconds s) { return Milliseconds(s.count * 1000); }

// Up to the next whole second; every export uses this same rounding.
constexpr Seconds rounded_up(Milliseconds ms) {
  return Seconds(ms.count >= 0 ? (ms.count + 999) / 1000 : -((-ms.count) / 1000));
}

// Time to cover a distance at a speed, rounded up to a whole millisecond. REQUIRES: speed > 0.
constexpr Milliseconds travel_time(Millimetres distance, MillimetresPerSecond speed) {
  return Milliseconds((distance.count * 1000 + speed.count - 1) / speed.count);
}

}  // namespace lanework
