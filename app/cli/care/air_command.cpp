#include <CLI/CLI.hpp>
#include <memory>

#include "app/cli/care/care_commands.h"
#include "app/cli/care/weather_answer.h"
#include "app/cli/care/weather_flags.h"
#include "app/cli/command.h"

namespace lanework::cli {
namespace {

namespace environment = care::environment;

int air(const WeatherFlags& flags) {
  const auto read = stated_weather(flags);
  if (!read) return report(read.faults());
  const StatedWeather& stated = read.value();
  const auto verdict =
      environment::judge_air(stated.weather, environment::air_table_of(stated.weather, stated.tables),
                             stated.tables.fine_particles, {flags.minutes_old, environment::kAirStaleAfterMinutes});
  return show_topic(air_answer(verdict, {}), verdict.verdict.change, {}, flags.json);
}

}  // namespace

void add_air_command(CLI::App& care, int& exit_status) {
  CLI::App* command = care.add_subcommand("air", "what the air's quality asks of a session");
  const auto flags = std::make_shared<WeatherFlags>();
  add_number(*command, *flags, "air_quality.index", "the air quality index");
  add_number(*command, *flags, "air_quality.fine_particles_micrograms_per_cubic_metre",
             "PM2.5, from which an index is made");
  add_text(*command, *flags, "air_quality.guide", "under-18 (the stricter, and the default) or schools");
  add_shared_flags(*command, *flags, true);
  command->callback([flags, &exit_status] { exit_status = air(*flags); });
}

}  // namespace lanework::cli
