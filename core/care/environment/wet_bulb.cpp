#include "core/care/environment/wet_bulb.h"

#include <cmath>

#include "core/base/elementary.h"
#include "core/figure/trigonometry.h"

namespace lanework::care::environment {
namespace {

constexpr double kRadiansPerDegree = 3.14159265358979323846 / 180;

double arc_tangent_radians(double x) { return figure::direction_of(x, 1) * kRadiansPerDegree; }

}  // namespace

Hectopascals vapour_pressure(Celsius air, RelativeHumidity humidity) {
  const double t = air.degrees;
  return {humidity.percent / 100 * 6.105 * elementary_exp(17.27 * t / (237.7 + t))};
}

std::optional<Celsius> wet_bulb(Celsius air, RelativeHumidity humidity) {
  const double t = air.degrees;
  const double r = humidity.percent;
  if (r < 5 || r > 99 || t < -20 || t > 50) return {};
  return Celsius{t * arc_tangent_radians(0.151977 * std::sqrt(r + 8.313659)) + arc_tangent_radians(t + r) -
                 arc_tangent_radians(r - 1.676331) + 0.00391838 * r * std::sqrt(r) * arc_tangent_radians(0.023101 * r) -
                 4.686035};
}

}  // namespace lanework::care::environment
