// What a ledger still has of a player who is erased: counted, and said in words.
#pragma once

#include <string>

#include "app/cli/ledger/ledger_folder.h"

namespace lanework::cli {

struct WhatRemains {
  std::int64_t sealed = 0;    // entries about the player: nothing opens them after the erasure
  std::int64_t evenings = 0;  // entries about evenings that name the player by id
};

// Before the erasure. Reads the whole ledger.
Result<WhatRemains> what_will_remain(const OpenLedger& open, const std::string& player);

// One line each.
std::string what_remains_words(const WhatRemains& remains, const std::string& player);

}  // namespace lanework::cli
