#include "app/cli/serve/keeping_flags.h"

#include <CLI/CLI.hpp>

namespace lanework::cli {

void add_keeping(CLI::App& command, serve::Keeping& keeping) {
  constexpr int kMostDays = 36'500;
  command
      .add_option("--keep-evenings-days", keeping.evenings_days,
                  "how long what was entered about sessions is kept; 730 if not stated, at least 365")
      ->check(CLI::Range(serve::kFewestEveningsDays, kMostDays));
}

}  // namespace lanework::cli
