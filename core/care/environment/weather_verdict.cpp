#include "core/care/environment/weather_verdict.h"

namespace lanework::care::environment {
namespace {

const BandTable& table_of(const BandTables& tables, const std::string& region) {
  const BandTable* found = tables.find(region);
  return found != nullptr ? *found : tables.of_default_region();
}

}  // namespace

const BandTable& heat_table_of(const Weather& weather, const EnvironmentTables& tables) {
  return table_of(tables.heat, weather.region);
}

const BandTable& cold_table_of(const Weather& weather, const EnvironmentTables& tables) {
  return table_of(tables.cold, weather.region);
}

const BandTable& air_table_of(const Weather& weather, const EnvironmentTables& tables) {
  return table_of(tables.air, weather.air_guide.empty() ? weather.region : weather.air_guide);
}

WeatherVerdict judge_weather(const Weather& weather, const EnvironmentTables& tables, Moment now) {
  const MeasuredAge age = age_at(weather.measured_at, now);
  const auto air_measured_at = weather.air_measured_at ? weather.air_measured_at : weather.measured_at;
  const MeasuredAge air_age = age_at(air_measured_at, now, kAirStaleAfterMinutes);
  WeatherVerdict out;
  out.heat = judge_heat(weather, heat_table_of(weather, tables), age);
  out.cold = judge_cold(weather, cold_table_of(weather, tables), age);
  out.lightning = judge_lightning(weather.lightning, now);
  out.air = judge_air(weather, air_table_of(weather, tables), tables.fine_particles, air_age);
  for (const SessionChange* change :
       {&out.heat.verdict.change, &out.cold.verdict.change, &out.lightning.change, &out.air.verdict.change})
    out.change = most_careful(out.change, *change);
  return out;
}

}  // namespace lanework::care::environment
