// The rooms behind a ledger's flags: ledger, gate and lists of one folder, or of one club in a PostgreSQL database.
#pragma once

#include "app/cli/ledger/ledger_folder.h"
#include "app/serve/rooms.h"

namespace lanework::cli {

serve::OpenRoom rooms_of(const LedgerFlags& flags);

}  // namespace lanework::cli
