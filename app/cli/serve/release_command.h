// What the board is given: a command of its own.
#pragma once

namespace CLI {
class App;
}

namespace lanework::cli {

void add_release_command(CLI::App& app, int& exit_status);

}  // namespace lanework::cli
