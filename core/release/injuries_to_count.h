// Which injuries the club's numbers count, the one place that says so: of players whose guardian agreed to statistics
// (core/ledger/consent.h).
#pragma once

#include <vector>

#include "core/ledger/fold.h"

namespace lanework::release {

// They live as long as the state.
std::vector<const ledger::Injury*> injuries_to_count(const ledger::State& state);

}  // namespace lanework::release
