// Heat index: how warm air and humidity feel together in the shade with light wind; full sun can add up to about 15 F.
// Regression of the National Weather Service's equation page: Rothfusz LP 1990, technical attachment SR 90-23. Nothing
// here decides by it: no authority's bands of the catalogue are bands of the heat index.
#pragma once

#include <cstdint>

#include "core/care/environment/units.h"

namespace lanework::care::environment {

enum class HeatIndexForm : std::uint8_t {
  kSimple,       // below 80 F
  kFull,         // the regression
  kFullDryAir,   // less for humidity below 13 % at 80 to 112 F
  kFullHumidAir  // more for humidity above 85 % at 80 to 87 F
};

struct HeatIndex {
  Fahrenheit value;
  HeatIndexForm form = HeatIndexForm::kSimple;
  // Within the printed chart (air 80 to 110 F, humidity 40 to 100 %, value to 137 F; its edges are from memory).
  // Outside it the page says that the regression does not hold.
  bool on_chart = false;
};

// The page averages the simple form with the air before it asks whether that is 80 F, and can be read in two ways: the
// form as it stands, or its mean with the air once more. Where the two disagree the higher of both answers is given.
// REQUIRES: 0 <= humidity <= 100.
HeatIndex heat_index(Fahrenheit air, RelativeHumidity humidity);

// The parts of it, for who wants to check them.
Fahrenheit simple_heat_index(Fahrenheit air, RelativeHumidity humidity);
Fahrenheit unadjusted_heat_index(Fahrenheit air, RelativeHumidity humidity);

}  // namespace lanework::care::environment
