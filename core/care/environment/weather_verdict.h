// The whole verdict of an evening's weather at one moment: heat, cold, lightning and air, and the most careful of what
// they ask.
#pragma once

#include "core/care/environment/judge.h"
#include "core/care/environment/lightning.h"
#include "core/care/environment/read_bands.h"

namespace lanework::care::environment {

struct WeatherVerdict {
  HeatVerdict heat;
  ColdVerdict cold;
  LightningVerdict lightning;
  AirVerdict air;
  SessionChange change;  // of all four
};

// The table of the weather's region, else the default of that topic.
const BandTable& heat_table_of(const Weather& weather, const EnvironmentTables& tables);
const BandTable& cold_table_of(const Weather& weather, const EnvironmentTables& tables);
const BandTable& air_table_of(const Weather& weather, const EnvironmentTables& tables);

// REQUIRES: nothing was measured after now. The tables outlive the verdict.
WeatherVerdict judge_weather(const Weather& weather, const EnvironmentTables& tables, Moment now);

}  // namespace lanework::care::environment
