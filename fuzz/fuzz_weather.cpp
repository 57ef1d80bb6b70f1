// Any text as a weather file and as each table of heat, cold and air: values, or clear faults; and of every sound
// weather a verdict that asks no less than any of its topics, and no less an hour later than fresh.
#include <cstddef>
#include <cstdint>
#include <string>

#include "core/care/environment/read_weather.h"
#include "core/care/environment/weather_verdict.h"
#include "fuzz/promise.h"

namespace {

using namespace lanework::care::environment;

constexpr const char* kFile = "a.toml";

constexpr const char* kHeat = R"(
default_region = "a"
[[table]]
key = "t"
name = "T"
source = "s"
standing = "read"
unit = "celsius"
regions = ["a"]
[[table.band]]
below = 24.0
words = "w"
[[table.band]]
up_to = 29.0
words = "w"
effort = "lower"
[table.band.unused_to_heat]
no_session = true
[[table.band]]
words = "w"
no_session = true
)";
constexpr const char* kCold = R"(
default_region = "a"
[[table]]
key = "t"
name = "T"
source = "s"
standing = "read"
unit = "fahrenheit"
regions = ["a"]
[[table.band]]
down_to = 30.0
words = "w"
[[table.band]]
words = "w"
no_session = true
)";
constexpr const char* kAir = R"(
default_region = "a"
[[table]]
key = "t"
name = "T"
source = "s"
standing = "read"
unit = "index"
regions = ["a"]
[[table.band]]
up_to = 150
words = "w"
[[table.band]]
words = "w"
no_session = true
[fine_particles]
source = "s"
standing = "unverified"
[[fine_particles.line]]
from = 0.0
to = 9.0
index_from = 0
index_to = 50
)";

EnvironmentDocuments sound_documents() {
  return {lanework::parse_toml("heat.toml", kHeat).value(), lanework::parse_toml("cold.toml", kCold).value(),
          lanework::parse_toml("air.toml", kAir).value()};
}

void check_tables(const lanework::Document& document) {
  for (const int which : {0, 1, 2}) {
    EnvironmentDocuments documents = sound_documents();
    (which == 0 ? documents.heat : which == 1 ? documents.cold : documents.air) = document;
    const auto read = read_environment_tables(documents);
    if (!read) lanework::fuzz::promise_clear_faults(read.faults(), kFile);
  }
}

void check_weather(const lanework::Document& document) {
  static const EnvironmentTables tables = read_environment_tables(sound_documents()).value();
  const auto read = read_weather(document, tables);
  if (!read) return lanework::fuzz::promise_clear_faults(read.faults(), kFile);
  const auto asked = moment_asked("18:00", read.value());
  if (!asked) return;
  const WeatherVerdict verdict = judge_weather(read.value(), tables, asked.value());
  for (const SessionChange* change : {&verdict.heat.verdict.change, &verdict.cold.verdict.change,
                                      &verdict.lightning.change, &verdict.air.verdict.change}) {
    lanework::fuzz::promise(at_least_as_careful(verdict.change, *change), "the whole asks no less than a part");
  }
  const WeatherVerdict later = judge_weather(read.value(), tables, plus_minutes(asked.value(), 61));
  lanework::fuzz::promise(at_least_as_careful(later.heat.verdict.change, verdict.heat.verdict.change),
                          "older weather asks no less");
  lanework::fuzz::promise(!verdict.heat.estimated || !verdict.heat.allowed_as_usual, "an estimate never allows");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string text(data, data + size);
  const auto document = lanework::parse_toml(kFile, text);
  if (!document) {
    lanework::fuzz::promise_clear_faults(document.faults(), kFile);
    return 0;
  }
  check_tables(document.value());
  check_weather(document.value());
  return 0;
}
