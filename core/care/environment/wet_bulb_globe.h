// Wet-bulb globe temperature: the one number of heat that authorities' bands go by.
//
// A measured one and an estimated one are two types, and nothing leads from the second to the first: only a
// measurement can say that a session is allowed (bands.h).
#pragma once

#include <cstdint>
#include <optional>

#include "core/base/result.h"
#include "core/care/environment/units.h"

namespace lanework::care::environment {

enum class MeasuredHow : std::uint8_t { kMeter, kThermometersOutdoors, kThermometersIndoors };

// How far a reading may be off where nobody states it: own judgement.
inline constexpr Celsius kMeterError{1.0};
inline constexpr Celsius kThermometerError{0.5};
// How far an estimate may be off: own judgement. Cloud, wind and night make the simplified one too high, strong sun and
// dry air too low (from memory).
inline constexpr Celsius kEstimateError{2.0};

class MeasuredWetBulbGlobe {
 public:
  [[nodiscard]] Celsius value() const { return value_; }
  [[nodiscard]] Celsius error() const { return error_; }
  [[nodiscard]] MeasuredHow how() const { return how_; }

  // What a meter shows. air, where it is known, must not lie more than 10 degrees below the reading (own judgement).
  static Result<MeasuredWetBulbGlobe> of_meter(Celsius shown, Celsius error, std::optional<Celsius> air);
  // 0.7 natural wet bulb + 0.2 globe + 0.1 air. A wet bulb above the air, or a globe more than 5 degrees below it,
  // cannot be: the fault says so.
  static Result<MeasuredWetBulbGlobe> outdoors(Celsius natural_wet_bulb, Celsius globe, Celsius air);
  // 0.7 natural wet bulb + 0.3 globe, indoors or without sun (the weights are from memory).
  static Result<MeasuredWetBulbGlobe> indoors(Celsius natural_wet_bulb, Celsius globe, std::optional<Celsius> air);

 private:
  MeasuredWetBulbGlobe(Celsius value, Celsius error, MeasuredHow how) : value_(value), error_(error), how_(how) {}
  Celsius value_;
  Celsius error_;
  MeasuredHow how_;
};

enum class EstimatedHow : std::uint8_t { kSimplified, kWithoutSun };

class EstimatedWetBulbGlobe {
 public:
  [[nodiscard]] Celsius value() const { return value_; }
  [[nodiscard]] Celsius error() const { return error_; }
  [[nodiscard]] EstimatedHow how() const { return how_; }
  // What it may be at most by its stated error.
  [[nodiscard]] Celsius at_most() const { return {value_.degrees + error_.degrees}; }

  // 0.567 air + 0.393 vapour pressure + 3.94 (Australian Bureau of Meteorology, as reprinted): fairly strong sun, light
  // wind.
  static EstimatedWetBulbGlobe simplified(Celsius air, RelativeHumidity humidity);
  // Indoors or without sun: the indoor form with Stull's wet bulb and the globe as warm as the air. Drier than 5 %
  // counts as 5 %; above 99 %, and outside -20 to 50 C, the wet bulb counts as the air.
  static EstimatedWetBulbGlobe without_sun(Celsius air, RelativeHumidity humidity);

 private:
  EstimatedWetBulbGlobe(Celsius value, EstimatedHow how) : value_(value), how_(how) {}
  Celsius value_;
  Celsius error_ = kEstimateError;
  EstimatedHow how_;
};

}  // namespace lanework::care::environment
