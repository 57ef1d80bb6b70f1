// What a ledger knows, for commands that otherwise go by files: blocks, cards, reports.
#pragma once

#include "app/cli/ledger/ledger_folder.h"
#include "app/planning/squad_plan.h"
#include "core/ledger/fold.h"

namespace lanework::cli {

// --ledger, --ledger-key, --postgres, --ledger-club: beside flags of the command's own named --key and --club.
void add_ledger_source(CLI::App& command, LedgerFlags& flags);

// Everything that was entered, folded, without records that wait for a consent. Reads the whole ledger.
Result<ledger::State> state_of(const OpenLedger& open);

// The same of a ledger that is yet to be opened, and what care reads of it.
Result<planning::Known> read_known(const LedgerFlags& flags);

}  // namespace lanework::cli
