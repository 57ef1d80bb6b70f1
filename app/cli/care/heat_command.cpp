#include <CLI/CLI.hpp>
#include <memory>

#include "app/cli/care/care_commands.h"
#include "app/cli/care/weather_answer.h"
#include "app/cli/care/weather_flags.h"
#include "app/cli/command.h"

namespace lanework::cli {
namespace {

namespace environment = care::environment;

int heat(const WeatherFlags& flags) {
  const auto read = stated_weather(flags);
  if (!read) return report(read.faults());
  const StatedWeather& stated = read.value();
  const auto verdict =
      environment::judge_heat(stated.weather, environment::heat_table_of(stated.weather, stated.tables), stated.age);
  return show_topic(heat_answer(verdict, {}), verdict.verdict.change, {}, flags.json);
}

}  // namespace

void add_heat_command(CLI::App& care, int& exit_status) {
  CLI::App* command = care.add_subcommand("heat", "what the heat asks of a session, by wet-bulb globe temperature");
  const auto flags = std::make_shared<WeatherFlags>();
  add_number(*command, *flags, "air_celsius", "the air in the shade");
  add_number(*command, *flags, "air_fahrenheit", "the same in Fahrenheit");
  add_number(*command, *flags, "humidity_percent", "relative humidity; not known, it is taken as 100");
  add_number(*command, *flags, "wet_bulb_globe_celsius", "what a wet-bulb globe meter shows");
  add_number(*command, *flags, "wet_bulb_globe_fahrenheit", "the same in Fahrenheit");
  add_number(*command, *flags, "wet_bulb_globe_error_celsius", "how far the meter may be off (1)");
  add_number(*command, *flags, "natural_wet_bulb_celsius", "with a globe in place of a meter");
  add_number(*command, *flags, "natural_wet_bulb_fahrenheit", "the same in Fahrenheit");
  add_number(*command, *flags, "globe_celsius", "the black globe");
  add_number(*command, *flags, "globe_fahrenheit", "the same in Fahrenheit");
  add_text(*command, *flags, "sun", "full, cloud or none; only 'none' makes an estimate cooler");
  add_switch(*command, *flags, "indoor", "in a hall");
  add_whole_number(*command, *flags, "acclimatised_days", "days of training in such heat of late");
  add_whole_number(*command, *flags, "youngest_age", "age of the youngest player");
  add_shared_flags(*command, *flags, true);
  command->callback([flags, &exit_status] { exit_status = heat(*flags); });
}

}  // namespace lanework::cli
