#include <CLI/CLI.hpp>
#include <cstdio>
#include <exception>

#include "app/cli/command.h"
#include "app/cli/serve/release_command.h"

namespace lanework::cli {

int report(const Faults& faults) {
  for (const Fault& fault : faults) std::fprintf(stderr, "%s\n", to_line(fault).c_str());
  return kMistake;
}

namespace {

int run(int argc, char** argv) {
  CLI::App app{"Lanework: the right warm-up for every squad, every evening."};
  app.require_subcommand(1);
  int exit_status = kDone;
  add_plan_command(app, exit_status);
  add_card_command(app, exit_status);
  add_clock_command(app, exit_status);
  add_pairs_command(app, exit_status);
  add_catalogue_command(app, exit_status);
  add_club_command(app, exit_status);
  add_cards_command(app, exit_status);
  add_export_command(app, exit_status);
  add_summary_command(app, exit_status);
  add_clinic_command(app, exit_status);
  add_block_command(app, exit_status);
  add_evidence_command(app, exit_status);
  add_care_command(app, exit_status);
  add_ledger_command(app, exit_status);
  add_club_import_command(app, exit_status);
  add_account_command(app, exit_status);
  add_retain_command(app, exit_status);
  add_release_command(app, exit_status);
  add_serve_command(app, exit_status);
  add_worker_command(app, exit_status);
  add_backup_command(app, exit_status);
  add_restore_command(app, exit_status);
  try {
    app.parse(argc, argv);
  } catch (const CLI::Success& help) {
    return app.exit(help);
  } catch (const CLI::ParseError& error) {
    std::fprintf(stderr, "lanework: %s ('lanework --help' shows what there is)\n", error.what());
    return kMistake;
  }
  return exit_status;
}

}  // namespace
}  // namespace lanework::cli

int main(int argc, char** argv) {
  try {
    return lanework::cli::run(argc, argv);
  } catch (const std::exception& error) {
    std::fprintf(stderr, "lanework: this should not have happened: %s\n", error.what());
    return 3;
  }
}
