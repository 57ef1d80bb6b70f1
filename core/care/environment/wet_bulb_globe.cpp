#include "core/care/environment/wet_bulb_globe.h"

#include <algorithm>

#include "core/care/environment/degrees_text.h"
#include "core/care/environment/wet_bulb.h"

namespace lanework::care::environment {
namespace {

// Own judgement: what a thermometer can be off by before the reading is impossible.
constexpr double kGlobeBelowAir = 5;
constexpr double kMeterAboveAir = 10;

Fault impossible(const char* field, const std::string& found, const std::string& expected) {
  return {FaultCode::kContradiction, {"", 0, 0, field}, found, expected, "one of the thermometers is read wrong"};
}

std::optional<Fault> wrong_thermometers(Celsius natural_wet_bulb, Celsius globe, std::optional<Celsius> air) {
  if (air && natural_wet_bulb > *air)
    return impossible("natural_wet_bulb", to_text(natural_wet_bulb) + ", above the air's " + to_text(*air),
                      "a wet bulb no warmer than the air");
  if (air && globe.degrees < air->degrees - kGlobeBelowAir)
    return impossible("globe", to_text(globe) + ", far below the air's " + to_text(*air),
                      "a globe about as warm as the air or warmer");
  if (natural_wet_bulb > globe)
    return impossible("natural_wet_bulb", to_text(natural_wet_bulb) + ", above the globe's " + to_text(globe),
                      "a wet bulb no warmer than the globe");
  return {};
}

}  // namespace

Result<MeasuredWetBulbGlobe> MeasuredWetBulbGlobe::of_meter(Celsius shown, Celsius error, std::optional<Celsius> air) {
  if (air && shown.degrees > air->degrees + kMeterAboveAir)
    return Fault{FaultCode::kContradiction,
                 {"", 0, 0, "wet_bulb_globe"},
                 to_text(shown) + " in air of " + to_text(*air),
                 "at most 10 degrees more than the air",
                 "is one of the two in another unit?"};
  return MeasuredWetBulbGlobe(shown, error, MeasuredHow::kMeter);
}

Result<MeasuredWetBulbGlobe> MeasuredWetBulbGlobe::outdoors(Celsius natural_wet_bulb, Celsius globe, Celsius air) {
  if (const auto fault = wrong_thermometers(natural_wet_bulb, globe, air)) return *fault;
  return MeasuredWetBulbGlobe({0.7 * natural_wet_bulb.degrees + 0.2 * globe.degrees + 0.1 * air.degrees},
                              kThermometerError, MeasuredHow::kThermometersOutdoors);
}

Result<MeasuredWetBulbGlobe> MeasuredWetBulbGlobe::indoors(Celsius natural_wet_bulb, Celsius globe,
                                                           std::optional<Celsius> air) {
  if (const auto fault = wrong_thermometers(natural_wet_bulb, globe, air)) return *fault;
  return MeasuredWetBulbGlobe({0.7 * natural_wet_bulb.degrees + 0.3 * globe.degrees}, kThermometerError,
                              MeasuredHow::kThermometersIndoors);
}

EstimatedWetBulbGlobe EstimatedWetBulbGlobe::simplified(Celsius air, RelativeHumidity humidity) {
  const double e = vapour_pressure(air, humidity).pressure;
  return {{0.567 * air.degrees + 0.393 * e + 3.94}, EstimatedHow::kSimplified};
}

EstimatedWetBulbGlobe EstimatedWetBulbGlobe::without_sun(Celsius air, RelativeHumidity humidity) {
  const RelativeHumidity fitted{std::max(5.0, humidity.percent)};
  const Celsius wet = std::min(wet_bulb(air, fitted).value_or(air), air);
  return {{0.7 * wet.degrees + 0.3 * air.degrees}, EstimatedHow::kWithoutSun};
}

}  // namespace lanework::care::environment
