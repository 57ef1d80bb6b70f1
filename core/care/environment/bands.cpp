#include "core/care/environment/bands.h"

#include <algorithm>
#include <cmath>

namespace lanework::care::environment {
const char* unit_text(BandUnit unit) {
  switch (unit) {
    case BandUnit::kCelsius:
      return "°C";
    case BandUnit::kFahrenheit:
      return "°F";
    case BandUnit::kIndex:
      break;
  }
  return "";
}

const char* standing_words(Standing standing) {
  switch (standing) {
    case Standing::kRead:
      return "read";
    case Standing::kReadSecondHand:
      return "read at second hand";
    case Standing::kUnverified:
      break;
  }
  return "unverified";
}

const BandTable* BandTables::find(std::string_view region) const {
  for (const BandTable& table : tables) {
    if (std::find(table.regions.begin(), table.regions.end(), region) != table.regions.end()) return &table;
  }
  return nullptr;
}

const BandTable& BandTables::of_default_region() const { return *find(default_region); }

double in_unit_of(const BandTable& table, Celsius t) {
  return table.unit == BandUnit::kFahrenheit ? to_fahrenheit(t).degrees : t.degrees;
}

std::size_t band_of(const BandTable& table, double value) {
  const double careful = table.colder_is_more ? -value : value;
  const auto thousandths = static_cast<std::int64_t>(std::llround(careful * 1000));
  for (std::size_t i = 0; i + 1 < table.bands.size(); ++i) {
    const BandEnd& end = *table.bands[i].end;
    if (thousandths < end.thousandths || (end.included && thousandths == end.thousandths)) return i;
  }
  return table.bands.size() - 1;
}

Ruling rule(const BandTable& heat, const MeasuredWetBulbGlobe& measured) {
  return {band_of(heat, in_unit_of(heat, measured.value()))};
}

Caution caution(const BandTable& heat, const EstimatedWetBulbGlobe& estimated) {
  return {band_of(heat, in_unit_of(heat, estimated.at_most()))};
}

bool allows_as_usual(const BandTable& table, const Ruling& ruling, bool used_to_heat) {
  const Band& band = table.bands[ruling.band];
  return !(used_to_heat ? band.usual : band.unused_to_heat).changes();
}

}  // namespace lanework::care::environment
