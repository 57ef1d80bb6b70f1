// Flags of the weather's commands, folded into a document: a flag and a line of a weather file are one thing.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/care/environment/read_weather.h"

namespace CLI {
class App;
}

namespace lanework::cli {

struct WeatherFlags {
  std::map<std::string, std::optional<double>> numbers;  // by key of a weather file
  std::map<std::string, std::optional<int>> whole_numbers;
  std::map<std::string, std::string> texts;
  std::map<std::string, bool> switches;
  std::optional<int> minutes_old;
  std::string catalogue;
  bool json = false;
};

// A flag '--air-celsius' of the key 'air_celsius'; the flags outlive the command.
void add_number(CLI::App& command, WeatherFlags& flags, const std::string& key, const std::string& help);
void add_whole_number(CLI::App& command, WeatherFlags& flags, const std::string& key, const std::string& help);
void add_text(CLI::App& command, WeatherFlags& flags, const std::string& key, const std::string& help);
void add_switch(CLI::App& command, WeatherFlags& flags, const std::string& key, const std::string& help);
// --region, --minutes-old, --catalogue, --json.
void add_shared_flags(CLI::App& command, WeatherFlags& flags, bool by_age);

// The tables of catalogue/care; empty: of the catalogue beside the program.
Result<care::environment::EnvironmentTables> read_environment_files(const std::string& catalogue);

// The weather that the flags state, read as a file would be, and the tables it is held against. Faults name flags.
struct StatedWeather {
  care::environment::EnvironmentTables tables;
  care::environment::Weather weather;
  care::environment::MeasuredAge age;  // of all but the air's quality
};
Result<StatedWeather> stated_weather(const WeatherFlags& flags);

}  // namespace lanework::cli
