// One child's page, a subcommand of 'ledger'.
#pragma once

namespace CLI {
class App;
}

namespace lanework::cli {

void add_timeline_command(CLI::App& ledger, int& exit_status);

}  // namespace lanework::cli
