// Any text as each TOML file of care (care_promises.h): weather and its tables, rules, entries, venue, incident.
#include "fuzz/care_promises.h"
#include "fuzz/toml_input.h"

namespace {

void check_document(const lanework::Document& document) {
  lanework::fuzz::check_weather_tables(document);
  lanework::fuzz::check_weather(document);
  lanework::fuzz::check_care_rules(document);
  lanework::fuzz::check_entries(document);
  lanework::fuzz::check_venue(document);
  lanework::fuzz::check_incident(document);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  return lanework::fuzz::with_toml(data, size, check_document);
}
