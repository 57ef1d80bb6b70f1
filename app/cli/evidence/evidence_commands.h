// The calculators of 'lanework evidence': each adds its own subcommand, and sets exit_status when it is called.
#pragma once

namespace CLI {
class App;
}

namespace lanework::cli {

void add_rate_command(CLI::App& evidence, int& exit_status);
void add_ratio_command(CLI::App& evidence, int& exit_status);
void add_arms_command(CLI::App& evidence, int& exit_status);
void add_pool_command(CLI::App& evidence, int& exit_status);
void add_standardise_command(CLI::App& evidence, int& exit_status);
void add_fit_command(CLI::App& evidence, int& exit_status);
void add_watch_command(CLI::App& evidence, int& exit_status);
void add_funnel_command(CLI::App& evidence, int& exit_status);
void add_shrink_command(CLI::App& evidence, int& exit_status);
void add_power_command(CLI::App& evidence, int& exit_status);
void add_agree_command(CLI::App& evidence, int& exit_status);
void add_import_command(CLI::App& evidence, int& exit_status);
void add_report_command(CLI::App& evidence, int& exit_status);
void add_emphasis_command(CLI::App& evidence, int& exit_status);
void add_seasons_command(CLI::App& evidence, int& exit_status);

}  // namespace lanework::cli
