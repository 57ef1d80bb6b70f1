#include <CLI/CLI.hpp>

#include "app/cli/command.h"
#include "app/cli/evidence/evidence_commands.h"

namespace lanework::cli {

void add_evidence_command(CLI::App& app, int& exit_status) {
  CLI::App* evidence = app.add_subcommand("evidence", "rates, comparisons, models and watching, each with its limits");
  evidence->require_subcommand(1);
  add_rate_command(*evidence, exit_status);
  add_ratio_command(*evidence, exit_status);
  add_arms_command(*evidence, exit_status);
  add_pool_command(*evidence, exit_status);
  add_standardise_command(*evidence, exit_status);
  add_fit_command(*evidence, exit_status);
  add_watch_command(*evidence, exit_status);
  add_funnel_command(*evidence, exit_status);
  add_shrink_command(*evidence, exit_status);
  add_power_command(*evidence, exit_status);
  add_agree_command(*evidence, exit_status);
  add_import_command(*evidence, exit_status);
  add_report_command(*evidence, exit_status);
  add_emphasis_command(*evidence, exit_status);
  add_seasons_command(*evidence, exit_status);
}

}  // namespace lanework::cli
