// What 'lanework care' asks: each adds its own subcommand, and sets exit_status when it is called.
#pragma once

namespace CLI {
class App;
}

namespace lanework::cli {}  // namespace lanework::cli
