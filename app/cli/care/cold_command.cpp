#include <CLI/CLI.hpp>
#include <memory>

#include "app/cli/care/care_commands.h"
#include "app/cli/care/weather_answer.h"
#include "app/cli/care/weather_flags.h"
#include "app/cli/command.h"

namespace lanework::cli {
namespace {

namespace environment = care::environment;

int cold(const WeatherFlags& flags) {
  const auto read = stated_weather(flags);
  if (!read) return report(read.faults());
  const StatedWeather& stated = read.value();
  const auto verdict =
      environment::judge_cold(stated.weather, environment::cold_table_of(stated.weather, stated.tables), stated.age);
  return show_topic(cold_answer(verdict, {}), verdict.verdict.change, {}, flags.json);
}

}  // namespace

void add_cold_command(CLI::App& care, int& exit_status) {
  CLI::App* command = care.add_subcommand("cold", "what the cold asks of a session, by wind chill");
  const auto flags = std::make_shared<WeatherFlags>();
  add_number(*command, *flags, "air_celsius", "the air");
  add_number(*command, *flags, "air_fahrenheit", "the same in Fahrenheit");
  add_number(*command, *flags, "wind_metres_per_second", "wind; not known, it is taken as 20 km/h");
  add_number(*command, *flags, "wind_kilometres_per_hour", "the same in kilometres per hour");
  add_number(*command, *flags, "wind_miles_per_hour", "the same in miles per hour");
  add_switch(*command, *flags, "wet", "rain, sleet or soaked ground: one band more careful");
  add_shared_flags(*command, *flags, true);
  command->callback([flags, &exit_status] { exit_status = cold(*flags); });
}

}  // namespace lanework::cli
