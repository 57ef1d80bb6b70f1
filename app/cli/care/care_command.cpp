#include <CLI/CLI.hpp>

#include "app/cli/care/care_commands.h"
#include "app/cli/command.h"

namespace lanework::cli {

void add_care_command(CLI::App& app, int& exit_status) {
  CLI::App* care =
      app.add_subcommand("care", "what holds a player or a session back; local rules and licensed practice come first");
  care->require_subcommand(1);
  add_weather_command(*care, exit_status);
  add_heat_command(*care, exit_status);
  add_cold_command(*care, exit_status);
  add_lightning_command(*care, exit_status);
  add_air_command(*care, exit_status);
  add_care_pain_command(*care, exit_status);
  add_care_return_command(*care, exit_status);
  add_care_standing_command(*care, exit_status);
  add_care_growth_command(*care, exit_status);
  add_care_load_command(*care, exit_status);
  add_care_screen_command(*care, exit_status);
  add_care_incident_commands(*care, exit_status);
  add_care_emergency_sheet_command(*care, exit_status);
}

}  // namespace lanework::cli
