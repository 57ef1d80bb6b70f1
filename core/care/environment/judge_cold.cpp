#include <utility>

#include "core/care/environment/degrees_text.h"
#include "core/care/environment/judge.h"
#include "core/care/environment/take_band.h"
#include "core/care/environment/wind_chill.h"

namespace lanework::care::environment {
namespace {

// In Fahrenheit or Celsius by that system's own equation; the air itself where there is no wind chill.
struct Felt {
  double degrees = 0;
  bool by_wind_chill = false;
};

Felt felt_in(BandUnit unit, Celsius air, MetresPerSecond wind) {
  if (unit == BandUnit::kCelsius) {
    const auto chill = wind_chill(air, to_kilometres_per_hour(wind));
    return {chill.value_or(air).degrees, chill.has_value()};
  }
  const Fahrenheit in_fahrenheit = to_fahrenheit(air);
  const auto chill = wind_chill(in_fahrenheit, to_miles_per_hour(wind));
  return {chill.value_or(in_fahrenheit).degrees, chill.has_value()};
}

Celsius in_celsius(BandUnit unit, double degrees) {
  return unit == BandUnit::kCelsius ? Celsius{degrees} : to_celsius({degrees});
}

ColdVerdict judge_felt(const Weather& weather, const BandTable& table, const MeasuredAge& age) {
  Found found{Topic::kCold, 0, {}, {}, 0, false, false};
  if (!weather.wind)
    found.cautions.push_back("wind is not known: taken as " +
                             std::to_string(static_cast<int>(kWindWhereUnknown.speed)) + " km/h");
  if (weather.wet && *weather.air < kWetCountsBelow) {
    found.raised_by = 1;
    found.cautions.emplace_back("wet: one band more careful");
  }
  const Felt felt = felt_in(table.unit, *weather.air, weather.wind.value_or(to_metres_per_second(kWindWhereUnknown)));
  const Celsius felt_celsius = in_celsius(table.unit, felt.degrees);
  found.number = felt.by_wind_chill ? "wind chill " + in_both(felt_celsius) + " in air of " + in_both(*weather.air)
                                    : "air of " + in_both(*weather.air) + ", no wind chill";
  if (to_fahrenheit(felt_celsius) <= kFrostbiteWithinHalfAnHour)
    found.cautions.emplace_back("bare skin can freeze within 30 minutes");
  found.band = band_of(table, felt.degrees);
  return {take_band(table, std::move(found), age), felt.degrees, felt.by_wind_chill};
}

}  // namespace

ColdVerdict judge_cold(const Weather& weather, const BandTable& table, const MeasuredAge& age) {
  const bool warm = (weather.air && *weather.air >= kColdJudgedBelow) ||
                    (!weather.air && weather.wet_bulb_globe && weather.wet_bulb_globe->value() >= kColdJudgedBelow);
  if (weather.indoor) return {not_judged(Topic::kCold, "indoors: cold is not judged", "own-judgement", age), {}, false};
  if (warm) return {not_judged(Topic::kCold, "too warm for cold to be judged", "own-judgement", age), {}, false};
  if (weather.air) return judge_felt(weather, table, age);
  return {taken_for_second_band(table, Topic::kCold, "nobody measured how cold it is", false, {}), {}, false};
}

}  // namespace lanework::care::environment
