#include <string>

#include "core/care/environment/read_weather.h"
#include "core/care/environment/weather_verdict.h"
#include "fuzz/care_promises.h"
#include "fuzz/toml_input.h"

namespace lanework::fuzz {
namespace {

using namespace care::environment;

// A file of one table with these bands.
Document table_of(const std::string& unit, const std::string& bands) {
  const std::string head =
      "default_region = \"a\"\n[[table]]\nkey = \"t\"\nname = \"T\"\nsource = \"s\"\nstanding = \"read\"\n"
      "regions = [\"a\"]\nunit = \"";
  return parse_toml("sound.toml", head + unit + "\"\n" + bands).value();
}

std::string band(const std::string& keys) { return "[[table.band]]\nwords = \"w\"\n" + keys; }

EnvironmentDocuments sound_documents() {
  const std::string last = band("no_session = true\n");
  const std::string middle = band("up_to = 29.0\neffort = \"lower\"\n[table.band.unused_to_heat]\nno_session = true\n");
  const std::string particles =
      "[fine_particles]\nsource = \"s\"\nstanding = \"unverified\"\n[[fine_particles.line]]\nfrom = 0.0\nto = 9.0\n"
      "index_from = 0\nindex_to = 50\n";
  return {table_of("celsius", band("below = 24.0\n") + middle + last),
          table_of("fahrenheit", band("down_to = 30.0\n") + last),
          table_of("index", band("up_to = 150\n") + last + particles)};
}

}  // namespace

void check_weather_tables(const Document& document) {
  static const EnvironmentDocuments kSound = sound_documents();
  for (const auto which : {&EnvironmentDocuments::heat, &EnvironmentDocuments::cold, &EnvironmentDocuments::air}) {
    EnvironmentDocuments documents = kSound;
    documents.*which = document;
    const auto read = read_environment_tables(documents);
    if (!read) promise_placed_faults(read.faults());
  }
}

void check_weather(const Document& document) {
  static const EnvironmentTables kTables = read_environment_tables(sound_documents()).value();
  const auto read = read_weather(document, kTables);
  if (!read) return promise_placed_faults(read.faults());
  const auto asked = moment_asked("18:00", read.value());
  if (!asked) return;
  const WeatherVerdict verdict = judge_weather(read.value(), kTables, asked.value());
  for (const SessionChange* change : {&verdict.heat.verdict.change, &verdict.cold.verdict.change,
                                      &verdict.lightning.change, &verdict.air.verdict.change}) {
    promise(at_least_as_careful(verdict.change, *change), "the whole asks no less than a part");
  }
  const WeatherVerdict later = judge_weather(read.value(), kTables, plus_minutes(asked.value(), 61));
  promise(at_least_as_careful(later.heat.verdict.change, verdict.heat.verdict.change), "older weather asks no less");
  promise(!verdict.heat.estimated || !verdict.heat.allowed_as_usual, "an estimate never allows");
}

}  // namespace lanework::fuzz
