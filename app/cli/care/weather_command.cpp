#include <CLI/CLI.hpp>
#include <memory>

#include "app/cli/care/care_commands.h"
#include "app/cli/care/weather_answer.h"
#include "app/cli/care/weather_flags.h"
#include "app/cli/command.h"
#include "app/read/files.h"

namespace lanework::cli {
namespace {

namespace environment = care::environment;

struct WeatherFileFlags {
  std::string file;
  std::string at;
  WeatherFlags shared;
};

bool knows_a_day(const environment::Weather& weather, const std::string& at) {
  return weather.measured_at || weather.air_measured_at || weather.lightning.last ||
         environment::parse_moment(at).has_value();
}

int weather(const WeatherFileFlags& flags) {
  const auto tables = read_environment_files(flags.shared.catalogue);
  if (!tables) return report(tables.faults());
  const auto document = read::read_toml_file(flags.file);
  if (!document) return report(document.faults());
  const auto read = environment::read_weather(document.value(), tables.value());
  if (!read) return report(read.faults());
  const auto now = environment::moment_asked(flags.at, read.value());
  if (!now) return report(now.faults());
  const AskedAt at{now.value(), knows_a_day(read.value(), flags.at)};
  const auto verdict = environment::judge_weather(read.value(), tables.value(), at.now);
  return show_weather({lightning_answer(verdict.lightning, at), heat_answer(verdict.heat, at),
                       cold_answer(verdict.cold, at), air_answer(verdict.air, at)},
                      verdict.change, at, flags.shared.json);
}

}  // namespace

void add_weather_command(CLI::App& care, int& exit_status) {
  CLI::App* command =
      care.add_subcommand("weather", "heat, cold, lightning and air of a weather file, and what they ask together");
  const auto flags = std::make_shared<WeatherFileFlags>();
  command->add_option("file", flags->file, "a weather file (docs/formats/weather.md)")->required();
  command->add_option("--at", flags->at, "the moment asked about: 18:00, or 2026-07-14T18:00")->required();
  add_shared_flags(*command, flags->shared, false);
  command->callback([flags, &exit_status] { exit_status = weather(*flags); });
}

}  // namespace lanework::cli
