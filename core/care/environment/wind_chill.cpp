#include "core/care/environment/wind_chill.h"

#include "core/base/elementary.h"

namespace lanework::care::environment {
namespace {

// v^0.16, the same bits on every machine.
double pull_of_wind(double speed) { return elementary_exp(0.16 * elementary_log(speed)); }

}  // namespace

std::optional<Fahrenheit> wind_chill(Fahrenheit air, MilesPerHour wind) {
  if (air > kWarmestWindChill || wind < kSlowestWindChill) return {};
  const double pull = pull_of_wind(wind.speed);
  return Fahrenheit{35.74 + 0.6215 * air.degrees - 35.75 * pull + 0.4275 * air.degrees * pull};
}

std::optional<Celsius> wind_chill(Celsius air, KilometresPerHour wind) {
  if (air > kWarmestWindChillMetric || wind < kSlowestWindChillMetric) return {};
  const double pull = pull_of_wind(wind.speed);
  return Celsius{13.12 + 0.6215 * air.degrees - 11.37 * pull + 0.3965 * air.degrees * pull};
}

}  // namespace lanework::care::environment
