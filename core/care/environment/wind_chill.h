// Wind chill as the National Weather Service and its Canadian sister defined it in 2001: what bare skin of a face
// loses, told as the temperature of still air. Each unit system has its own published equation; they differ by
// rounding.
#pragma once

#include <optional>

#include "core/care/environment/units.h"

namespace lanework::care::environment {

// From memory (unverified): the limits within which the equations are meant.
inline constexpr Fahrenheit kWarmestWindChill{50};
inline constexpr MilesPerHour kSlowestWindChill{3};
inline constexpr Celsius kWarmestWindChillMetric{10};
inline constexpr KilometresPerHour kSlowestWindChillMetric{4.8};

// Empty outside those limits: there the air's own temperature stands.
std::optional<Fahrenheit> wind_chill(Fahrenheit air, MilesPerHour wind);
std::optional<Celsius> wind_chill(Celsius air, KilometresPerHour wind);

// From about here bare skin can freeze within 30 minutes (read at second hand).
inline constexpr Fahrenheit kFrostbiteWithinHalfAnHour{-18};

}  // namespace lanework::care::environment
