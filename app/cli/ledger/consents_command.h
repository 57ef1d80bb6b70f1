// Who was asked and who was not, a subcommand of 'ledger'.
#pragma once

namespace CLI {
class App;
}

namespace lanework::cli {

void add_consents_command(CLI::App& ledger, int& exit_status);

}  // namespace lanework::cli
