// What every command of the program is: its flags, added once, and what it does, returning the exit status.
// 0 done; 1 the answer is no (nothing fits, a plan breaks a rule); 2 a mistake in what was handed in.
#pragma once

#include <string>
#include <vector>

#include "core/base/result.h"

namespace CLI {
class App;
}

namespace lanework::cli {

inline constexpr int kDone = 0;
inline constexpr int kAnswerIsNo = 1;
inline constexpr int kMistake = 2;

// Each fault one line on standard error; gives kMistake.
int report(const Faults& faults);

// Each adds its subcommand; what it does is called while the command line is parsed, and sets exit_status.
void add_plan_command(CLI::App& app, int& exit_status);
void add_clock_command(CLI::App& app, int& exit_status);
void add_pairs_command(CLI::App& app, int& exit_status);
void add_card_command(CLI::App& app, int& exit_status);
void add_catalogue_command(CLI::App& app, int& exit_status);
void add_club_command(CLI::App& app, int& exit_status);
void add_cards_command(CLI::App& app, int& exit_status);
void add_export_command(CLI::App& app, int& exit_status);
void add_summary_command(CLI::App& app, int& exit_status);
void add_clinic_command(CLI::App& app, int& exit_status);
void add_block_command(CLI::App& app, int& exit_status);
void add_evidence_command(CLI::App& app, int& exit_status);
void add_care_command(CLI::App& app, int& exit_status);
void add_ledger_command(CLI::App& app, int& exit_status);
void add_club_import_command(CLI::App& app, int& exit_status);
void add_account_command(CLI::App& app, int& exit_status);
void add_retain_command(CLI::App& app, int& exit_status);
void add_serve_command(CLI::App& app, int& exit_status);
void add_worker_command(CLI::App& app, int& exit_status);
void add_backup_command(CLI::App& app, int& exit_status);
void add_restore_command(CLI::App& app, int& exit_status);

}  // namespace lanework::cli
