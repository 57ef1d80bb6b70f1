#include "core/release/injuries_to_count.h"

#include "core/ledger/consent.h"

namespace lanework::release {

std::vector<const ledger::Injury*> injuries_to_count(const ledger::State& state) {
  std::vector<const ledger::Injury*> out;
  for (const auto& [id, injury] : state.injuries) {
    const bool counts = ledger::consent_of(state, injury.player, ledger::kStatistics) == ledger::Consent::kGiven;
    if (counts) out.push_back(&injury);
  }
  return out;
}

}  // namespace lanework::release
