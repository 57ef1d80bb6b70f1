// Whether an entry may be shown, by the consents about its player as they stand now: asked of the store once a player.
// One lives as long as one request, so that a withdrawal closes at the next.
#pragma once

#include <map>
#include <string>

#include "app/store/store.h"
#include "core/ledger/consent.h"

namespace lanework::serve {

class OpenRecords {
 public:
  OpenRecords(store::Store& store, const ledger::KindTable& kinds) : store_(store), kinds_(kinds) {}

  // Faults: the store cannot be read.
  Result<bool> may_show(const ledger::Entry& entry);
  // Of one as it was handed in, also where it cannot be read as an entry.
  Result<bool> may_show_text(const std::string& bytes);

 private:
  store::Store& store_;
  const ledger::KindTable& kinds_;
  std::map<std::string, ledger::State> consents_;  // by player
};

}  // namespace lanework::serve
