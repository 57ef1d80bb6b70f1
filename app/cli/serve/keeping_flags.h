// How long what is kept: the flag that 'serve' and 'retain' share.
#pragma once

#include "app/serve/retention.h"

namespace CLI {
class App;
}

namespace lanework::cli {

void add_keeping(CLI::App& command, serve::Keeping& keeping);

}  // namespace lanework::cli
