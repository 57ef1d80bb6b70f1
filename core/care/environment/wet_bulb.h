// What water in the air does to a thermometer, from air and relative humidity alone.
#pragma once

#include <optional>

#include "core/care/environment/units.h"

namespace lanework::care::environment {

// Vapour pressure as the simplified wet-bulb globe estimate of the Australian Bureau of Meteorology has it.
// REQUIRES: air above -237 C.
Hectopascals vapour_pressure(Celsius air, RelativeHumidity humidity);

// Wet bulb of moving air at sea level: Stull R 2011, J Appl Meteorol Climatol 50:2267-9, as reprinted. Empty outside 5
// to 99 % and -20 to 50 C, where it was not fitted (the limits of temperature are from memory).
std::optional<Celsius> wet_bulb(Celsius air, RelativeHumidity humidity);

}  // namespace lanework::care::environment
