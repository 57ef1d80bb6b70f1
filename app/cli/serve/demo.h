// The invented club Quillmere Juniors with an invented autumn in its ledger, and one account of every role. For trying
// things out on one's own machine; the passwords are made anew each time and lie in a file beside the ledger.
#pragma once

#include <string>

#include "app/cli/ledger/ledger_folder.h"

namespace lanework::cli {

// Words for whoever started it. Where there is a ledger already nothing is made. Faults: no demo folder beside the
// catalogue, nothing can be written.
Result<std::string> make_demo(const LedgerFlags& flags, const std::string& catalogue);

}  // namespace lanework::cli
