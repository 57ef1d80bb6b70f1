// The board's releases as the server and the command line make and read them: from what the ledger holds now, beside
// everything that was given out before.
#pragma once

#include <string>
#include <vector>

#include "app/serve/now.h"
#include "app/serve/rooms.h"
#include "core/ledger/kinds.h"
#include "core/release/make_release.h"

namespace lanework::serve {

// What the store could not do, apart from what may not be released.
struct Refused {
  bool by_store = false;
  Faults faults;
  std::string key{};  // of core/release/period.h, 'days-that-went' or 'gives-a-number-away'; empty by the store
};

struct Drawn {
  std::optional<release::Made> made;  // empty: refused
  Refused refused;
};

// As they were given out, by number.
Result<std::vector<store::KeptRelease>> kept_releases(Room& room);

// The same, read.
Result<std::vector<release::Release>> releases_so_far(Room& room);

// Reads the whole ledger. Nothing is kept.
Drawn draw_release(Room& room, const ledger::KindTable& kinds, const std::vector<release::Named>& regions,
                   const release::Period& period, const Now& now);

// False: another was kept meanwhile.
Result<bool> keep_release(Room& room, const release::Release& release);

// What everybody who may read it gets, as text; what was tried and what could be worked out, for the lead alone.
Node for_the_lead(const release::Made& made);

}  // namespace lanework::serve
