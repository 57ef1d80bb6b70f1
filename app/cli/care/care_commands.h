// What 'lanework care' asks: each adds its own subcommand, and sets exit_status when it is called.
#pragma once

namespace CLI {
class App;
}

namespace lanework::cli {

void add_care_growth_command(CLI::App& care, int& exit_status);
void add_care_load_command(CLI::App& care, int& exit_status);
void add_care_screen_command(CLI::App& care, int& exit_status);

}  // namespace lanework::cli
