#include "app/cli/care/weather_flags.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <cmath>
#include <cstdint>
#include <filesystem>

#include "app/cli/evening_flags.h"
#include "app/read/files.h"

namespace lanework::cli {
namespace {

using care::environment::EnvironmentTables;

constexpr const char* kAirQuality = "air_quality.";

std::string flag_of(const std::string& key) {
  const std::string prefix = kAirQuality;
  std::string name = key.compare(0, prefix.size(), prefix) == 0 ? key.substr(prefix.size()) : key;
  std::replace(name.begin(), name.end(), '_', '-');
  return "--" + name;
}

void put(Node& root, const std::string& key, Node value) {
  const std::string prefix = kAirQuality;
  if (key.compare(0, prefix.size(), prefix) != 0) {
    root.set(key, std::move(value));
    return;
  }
  const Node* there = root.find("air_quality");
  Node table = there != nullptr ? *there : Node::make_table();
  table.set(key.substr(prefix.size()), std::move(value));
  root.set("air_quality", std::move(table));
}

// As a file would have it: 30, not 30.0.
Node number_node(double value) {
  const bool whole = std::abs(value) < 1e15 && value == std::floor(value);
  return whole ? Node::make_integer(static_cast<std::int64_t>(value)) : Node::make_real(value);
}

Document document_of(const WeatherFlags& flags) {
  Document document{"", Node::make_table()};
  for (const auto& [key, value] : flags.numbers)
    if (value) put(document.root, key, number_node(*value));
  for (const auto& [key, value] : flags.whole_numbers)
    if (value) put(document.root, key, Node::make_integer(*value));
  for (const auto& [key, value] : flags.texts)
    if (!value.empty()) put(document.root, key, Node::make_text(value));
  for (const auto& [key, value] : flags.switches)
    if (value) put(document.root, key, Node::make_boolean(true));
  return document;
}

}  // namespace

void add_number(CLI::App& command, WeatherFlags& flags, const std::string& key, const std::string& help) {
  command.add_option(flag_of(key), flags.numbers[key], help);
}

void add_whole_number(CLI::App& command, WeatherFlags& flags, const std::string& key, const std::string& help) {
  command.add_option(flag_of(key), flags.whole_numbers[key], help);
}

void add_text(CLI::App& command, WeatherFlags& flags, const std::string& key, const std::string& help) {
  command.add_option(flag_of(key), flags.texts[key], help);
}

void add_switch(CLI::App& command, WeatherFlags& flags, const std::string& key, const std::string& help) {
  command.add_flag(flag_of(key), flags.switches[key], help);
}

void add_shared_flags(CLI::App& command, WeatherFlags& flags, bool by_age) {
  if (by_age) {
    add_text(command, flags, "region", "whose tables: a region of catalogue/care/*.toml (the strictest for children)");
    command
        .add_option("--minutes-old", flags.minutes_old,
                    "how long ago it was measured; not stated, it is taken one band more careful")
        ->check(CLI::Range(0, 10000));
  }
  command.add_option("--catalogue", flags.catalogue, "folder of the catalogue (beside the program)");
  command.add_flag("--json", flags.json, "the answer as JSON (schema/weather-answer.schema.json)");
}

Result<EnvironmentTables> read_environment_files(const std::string& catalogue) {
  const auto folder = catalogue_folder(catalogue);
  if (!folder) return folder.faults();
  const std::filesystem::path care = std::filesystem::path(folder.value()) / "care";
  Faults faults;
  const auto document = [&](const char* name) {
    auto read = read::read_toml_file((care / name).string());
    if (!read) faults.insert(faults.end(), read.faults().begin(), read.faults().end());
    return read ? std::move(read).value() : Document{};
  };
  const care::environment::EnvironmentDocuments documents{document("heat_bands.toml"), document("cold_bands.toml"),
                                                          document("air_bands.toml")};
  if (!faults.empty()) return faults;
  return care::environment::read_environment_tables(documents);
}

Result<StatedWeather> stated_weather(const WeatherFlags& flags) {
  auto tables = read_environment_files(flags.catalogue);
  if (!tables) return tables.faults();
  auto weather = care::environment::read_weather(document_of(flags), tables.value());
  if (weather)
    return StatedWeather{std::move(tables).value(), std::move(weather).value(),
                         care::environment::MeasuredAge{flags.minutes_old}};
  Faults faults = weather.faults();
  for (Fault& fault : faults) fault.place.field = flag_of(fault.place.field);
  return faults;
}

}  // namespace lanework::cli
