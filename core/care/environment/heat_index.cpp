#include "core/care/environment/heat_index.h"

#include <algorithm>
#include <cmath>

namespace lanework::care::environment {
namespace {

constexpr double kFullFrom = 80;

HeatIndex full_heat_index(Fahrenheit air, RelativeHumidity humidity) {
  const double t = air.degrees;
  const double r = humidity.percent;
  const Fahrenheit plain = unadjusted_heat_index(air, humidity);
  if (r < 13 && t >= 80 && t <= 112) {
    const double less = (13 - r) / 4 * std::sqrt((17 - std::abs(t - 95)) / 17);
    return {{plain.degrees - less}, HeatIndexForm::kFullDryAir, false};
  }
  if (r > 85 && t >= 80 && t <= 87) {
    const double more = (r - 85) / 10 * ((87 - t) / 5);
    return {{plain.degrees + more}, HeatIndexForm::kFullHumidAir, false};
  }
  return {plain, HeatIndexForm::kFull, false};
}

bool is_on_chart(Fahrenheit air, RelativeHumidity humidity, Fahrenheit value) {
  return air.degrees >= 80 && air.degrees <= 110 && humidity.percent >= 40 && humidity.percent <= 100 &&
         value.degrees < 137.5;
}

}  // namespace

Fahrenheit simple_heat_index(Fahrenheit air, RelativeHumidity humidity) {
  const double t = air.degrees;
  return {0.5 * (t + 61.0 + 1.2 * (t - 68.0) + 0.094 * humidity.percent)};
}

Fahrenheit unadjusted_heat_index(Fahrenheit air, RelativeHumidity humidity) {
  const double t = air.degrees;
  const double r = humidity.percent;
  return {-42.379 + 2.04901523 * t + 10.14333127 * r - 0.22475541 * t * r - 0.00683783 * t * t - 0.05481717 * r * r +
          0.00122874 * t * t * r + 0.00085282 * t * r * r - 0.00000199 * t * t * r * r};
}

HeatIndex heat_index(Fahrenheit air, RelativeHumidity humidity) {
  const Fahrenheit simple = simple_heat_index(air, humidity);
  const bool as_it_stands = simple.degrees >= kFullFrom;
  const bool averaged_again = (simple.degrees + air.degrees) / 2 >= kFullFrom;
  HeatIndex out{simple, HeatIndexForm::kSimple, false};
  if (as_it_stands || averaged_again) {
    const HeatIndex full = full_heat_index(air, humidity);
    const bool both = as_it_stands && averaged_again;
    if (both || full.value > simple) out = full;
  }
  out.on_chart = is_on_chart(air, humidity, out.value);
  return out;
}

}  // namespace lanework::care::environment
