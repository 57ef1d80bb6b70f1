// The weather of one evening, as somebody measured, read or heard it. What is not known is empty: the judges say so and
// take the careful side.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "core/care/environment/fine_particles.h"
#include "core/care/environment/lightning.h"
#include "core/care/environment/moment.h"
#include "core/care/environment/units.h"
#include "core/care/environment/wet_bulb_globe.h"

namespace lanework::care::environment {

enum class Sun : std::uint8_t { kFull, kCloud, kNone };

struct Weather {
  std::optional<Moment> measured_at;
  std::string region;  // empty: the default tables
  std::optional<Celsius> air;
  std::optional<RelativeHumidity> humidity;
  std::optional<MetresPerSecond> wind;
  std::optional<Sun> sun;
  bool indoor = false;
  bool wet = false;                                    // rain, sleet or soaked ground
  std::optional<MeasuredWetBulbGlobe> wet_bulb_globe;  // by a meter or by thermometers
  std::optional<int> acclimatised_days;                // days of training in such heat within the last three weeks
  std::optional<int> youngest_age;
  std::string air_guide;  // empty: the region's
  std::optional<double> air_quality_index;
  std::optional<MicrogramsPerCubicMetre> fine_particles;
  std::optional<Moment> air_measured_at;  // empty: with the rest
  LightningClock lightning;
};

// Own judgement: older weather, or weather of an unknown time, is taken one band more careful. The air's index is a
// mean of many hours, and is published by the hour.
inline constexpr int kStaleAfterMinutes = 60;
inline constexpr int kAirStaleAfterMinutes = 180;

// How old a measurement is at the moment that is asked about.
struct MeasuredAge {
  std::optional<int> minutes;  // empty: nobody said when it was measured
  int stale_after = kStaleAfterMinutes;
  [[nodiscard]] bool stale() const;
};

MeasuredAge age_at(const std::optional<Moment>& measured_at, Moment now, int stale_after = kStaleAfterMinutes);
std::string age_words(const MeasuredAge& age);  // 'measured 20 minutes ago', 'nobody says when it was measured'

}  // namespace lanework::care::environment
