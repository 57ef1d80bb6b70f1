#include "core/release/injuries_to_count.h"

namespace lanework::release {

std::vector<const ledger::Injury*> injuries_to_count(const ledger::State& state) {
  std::vector<const ledger::Injury*> out;
  for (const auto& [id, injury] : state.injuries) out.push_back(&injury);
  return out;
}

}  // namespace lanework::release
