// Reads a weather file (docs/formats/weather.md).
#pragma once

#include "core/base/document.h"
#include "core/base/result.h"
#include "core/care/environment/read_bands.h"
#include "core/care/environment/weather.h"

namespace lanework::care::environment {

// All faults together: numbers out of their limits, thermometers that cannot be, one thing in two units, a region that
// no table has, ...
Result<Weather> read_weather(const Document& document, const EnvironmentTables& tables);

// The moment asked about: '18:00' is the one nearest to what was measured or heard, '2026-07-14T18:00' as it stands. A
// fault where weather was measured after it. Lightning may be later: clocks differ, and what is told counts.
Result<Moment> moment_asked(const std::string& text, const Weather& weather);

}  // namespace lanework::care::environment
