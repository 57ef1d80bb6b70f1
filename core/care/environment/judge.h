// What heat, cold and air ask of a session: the number, the authority's band it is taken for, why that may be more
// careful than the number alone, and the change.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "core/care/environment/bands.h"
#include "core/care/environment/heat_index.h"
#include "core/care/environment/weather.h"

namespace lanework::care::environment {

struct BandVerdict {
  Topic topic = Topic::kHeat;
  bool judged = false;               // false: nothing to judge by, or nothing to fear; 'number' says which
  const BandTable* table = nullptr;  // of the tables handed in
  std::size_t band = 0;
  bool unused_to_heat = false;  // the column of who is not used to heat is taken
  std::string number;           // 'wet-bulb globe about 32.6 °C (90.7 °F), a rough estimate and no reading, ...'
  std::vector<std::string> cautions;  // one sentence each
  SessionChange change;               // with one reason
};

struct HeatVerdict {
  BandVerdict verdict;
  std::optional<MeasuredWetBulbGlobe> measured;
  std::optional<EstimatedWetBulbGlobe> estimated;
  std::optional<HeatIndex> heat_index;
  bool allowed_as_usual = false;  // only ever by a fresh measurement
};

struct ColdVerdict {
  BandVerdict verdict;
  std::optional<double> felt;  // in the table's unit
  bool by_wind_chill = false;
};

struct AirVerdict {
  BandVerdict verdict;
  std::optional<double> index;
  bool beyond_scale = false;
};

// Own judgement, all of them.
inline constexpr Celsius kHeatJudgedFrom{10};   // colder air: heat is not judged
inline constexpr Celsius kColdJudgedBelow{15};  // warmer air: cold is not judged
inline constexpr Celsius kWetCountsBelow{10};   // wet is one band more careful
inline constexpr KilometresPerHour kWindWhereUnknown{20};
inline constexpr RelativeHumidity kHumidityWhereUnknown{100};
inline constexpr int kUsedToHeatAfterDays = 14;  // the safer end of 7 to 14 days (unverified)
inline constexpr int kYoungBelowYears = 13;      // slower to get used to heat (unverified; the age is own judgement)

// A measurement decides. Without one the estimate holds back but never allows; humidity that is not known counts as 100
// %. With neither a measurement nor the air's temperature the second band is taken.
HeatVerdict judge_heat(const Weather& weather, const BandTable& table, const MeasuredAge& age);

// By wind chill, or by the air where there is none. Without the air's temperature the second band is taken.
ColdVerdict judge_cold(const Weather& weather, const BandTable& table, const MeasuredAge& age);

// Air that nobody measured is said to be unknown and changes nothing.
AirVerdict judge_air(const Weather& weather, const BandTable& table, const FineParticleScale& scale,
                     const MeasuredAge& age);

}  // namespace lanework::care::environment
