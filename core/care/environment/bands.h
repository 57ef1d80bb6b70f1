// Tables of authorities: bands of heat, cold or air quality, and what each asks of a session. Data of
// catalogue/care/*.toml; one table is chosen by the region setting, and local rules come before all of them.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/care/environment/session_change.h"
#include "core/care/environment/wet_bulb_globe.h"

namespace lanework::care::environment {

enum class BandUnit : std::uint8_t { kCelsius, kFahrenheit, kIndex };
const char* unit_text(BandUnit unit);  // '°C', '°F', ''

// How sure we are of a table's numbers.
enum class Standing : std::uint8_t { kRead, kReadSecondHand, kUnverified };
const char* standing_words(Standing standing);  // 'read', 'read at second hand', 'unverified'

// Where a band ends on its careful side, in thousandths of the table's unit; 'included' where the value itself still
// belongs to the band. Of cold tables the signs are turned round, so that more is always more careful.
struct BandEnd {
  std::int64_t thousandths = 0;
  bool included = false;
};

struct Band {
  std::optional<BandEnd> end;    // empty: the last band, which has none
  std::string limits;            // as the table has them: 'below 24.0 °C', '24.0 to 25.9 °C'
  std::string words;             // what the authority asks, in our words
  std::string own_judgement;     // what of it is ours; may be empty
  SessionChange usual;           // without reasons
  SessionChange unused_to_heat;  // of who is not used to heat, or young; as usual where the table has one column
};

struct BandTable {
  std::string key;
  std::string name;
  std::string source;  // key of sources.toml
  Standing standing = Standing::kUnverified;
  BandUnit unit = BandUnit::kCelsius;
  bool colder_is_more = false;
  bool two_columns = false;
  std::vector<std::string> regions;
  std::vector<Band> bands;  // in careful order: none asks less than the one before
};

struct BandTables {
  std::string default_region;  // of who has not set one
  std::vector<BandTable> tables;

  // The table of a region; null where no table has it.
  [[nodiscard]] const BandTable* find(std::string_view region) const;
  [[nodiscard]] const BandTable& of_default_region() const;
};

// A temperature in the table's unit.
double in_unit_of(const BandTable& table, Celsius t);

// Where a value of the table's unit lies.
std::size_t band_of(const BandTable& table, double value);

// Where a measurement lies: the only thing that can allow a session.
struct Ruling {
  std::size_t band = 0;
};
// What an estimate leaves open at the best: it holds back, and nothing leads from it to a Ruling.
struct Caution {
  std::size_t at_least = 0;
};
Ruling rule(const BandTable& heat, const MeasuredWetBulbGlobe& measured);
// Takes the upper end of the estimate's error: nearer to a cut-off than that, the more careful band.
Caution caution(const BandTable& heat, const EstimatedWetBulbGlobe& estimated);
// Whether the table asks for nothing there. There is no such question to a Caution.
bool allows_as_usual(const BandTable& table, const Ruling& ruling, bool used_to_heat);

}  // namespace lanework::care::environment
