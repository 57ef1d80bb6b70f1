// What 'lanework care' asks: each adds its own subcommand, and sets exit_status when it is called.
#pragma once

namespace CLI {
class App;
}

namespace lanework::cli {

void add_weather_command(CLI::App& care, int& exit_status);
void add_heat_command(CLI::App& care, int& exit_status);
void add_cold_command(CLI::App& care, int& exit_status);
void add_lightning_command(CLI::App& care, int& exit_status);
void add_air_command(CLI::App& care, int& exit_status);
void add_care_pain_command(CLI::App& care, int& exit_status);
void add_care_return_command(CLI::App& care, int& exit_status);
void add_care_standing_command(CLI::App& care, int& exit_status);
void add_care_growth_command(CLI::App& care, int& exit_status);
void add_care_load_command(CLI::App& care, int& exit_status);
void add_care_screen_command(CLI::App& care, int& exit_status);
void add_care_incident_commands(CLI::App& care, int& exit_status);  // 'incident' and 'referral'
void add_care_emergency_sheet_command(CLI::App& care, int& exit_status);

}  // namespace lanework::cli
