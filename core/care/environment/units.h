// Measures of the weather, each in its own unit, so that a Fahrenheit is never taken for a Celsius. Real numbers: the
// published equations are.
#pragma once

#include <compare>

namespace lanework::care::environment {

struct Celsius {
  double degrees = 0;
  constexpr auto operator<=>(const Celsius&) const = default;
};
struct Fahrenheit {
  double degrees = 0;
  constexpr auto operator<=>(const Fahrenheit&) const = default;
};
struct RelativeHumidity {
  double percent = 0;  // 0 to 100
  constexpr auto operator<=>(const RelativeHumidity&) const = default;
};
struct MetresPerSecond {
  double speed = 0;
  constexpr auto operator<=>(const MetresPerSecond&) const = default;
};
struct KilometresPerHour {
  double speed = 0;
  constexpr auto operator<=>(const KilometresPerHour&) const = default;
};
struct MilesPerHour {
  double speed = 0;
  constexpr auto operator<=>(const MilesPerHour&) const = default;
};
struct Hectopascals {
  double pressure = 0;
  constexpr auto operator<=>(const Hectopascals&) const = default;
};

constexpr Fahrenheit to_fahrenheit(Celsius t) { return {t.degrees * 9 / 5 + 32}; }
constexpr Celsius to_celsius(Fahrenheit t) { return {(t.degrees - 32) * 5 / 9}; }

inline constexpr double kMetresPerMile = 1609.344;
constexpr KilometresPerHour to_kilometres_per_hour(MetresPerSecond v) { return {v.speed * 3.6}; }
constexpr MilesPerHour to_miles_per_hour(MetresPerSecond v) { return {v.speed * 3600 / kMetresPerMile}; }
constexpr MetresPerSecond to_metres_per_second(KilometresPerHour v) { return {v.speed / 3.6}; }
constexpr MetresPerSecond to_metres_per_second(MilesPerHour v) { return {v.speed * kMetresPerMile / 3600}; }

}  // namespace lanework::care::environment
