// 'lanework block check': a saved block answer, held against the club's folder by the independent checker.
#pragma once

#include <string>

#include "app/cli/rolling_flags.h"

namespace CLI {
class App;
}

namespace lanework::cli {

struct BlockCheckFlags {
  std::string club;
  std::string catalogue;
  std::string answer;
  std::string standing;  // of a block that has begun: the answer before
  RollingFlags rolling;
  bool json = false;
};

// The exit status: 0 sound, 1 faults of the answer, 2 mistakes in files.
int run_block_check(const BlockCheckFlags& flags);

// Adds 'check' to the command 'block'.
void add_block_check(CLI::App& block, int& exit_status);

}  // namespace lanework::cli
