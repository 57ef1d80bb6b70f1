// The board's releases as the server and the command line make and read them: from what the ledger holds now, beside
// everything that was given out before.
#pragma once

#include <optional>
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
  // Of core/release/period.h, 'days-that-went', 'not-one-line' (by the command line), 'names-a-player' or
  // 'gives-a-number-away'; empty by the store.
  std::string key{};
};

struct Drawn {
  std::optional<release::Made> made;  // empty: refused
  Refused refused;
};

// As they were given out, by number.
Result<std::vector<store::KeptRelease>> kept_releases(Room& room);

// The same, read.
Result<std::vector<release::Release>> releases_so_far(Room& room);

struct ReleaseAsked {
  release::Period period;
  std::string asked;  // of the board, in the lead's own words; a player's name or id in it is refused
  std::optional<std::vector<ledger::SessionKey>> planned = {};  // evenings of the club's calendar, if it has one
};

// Reads the whole ledger. Nothing is kept.
Drawn draw_release(Room& room, const ledger::KindTable& kinds, const std::vector<release::Named>& regions,
                   const ReleaseAsked& asked, const Now& now);

// False: another was kept meanwhile.
Result<bool> keep_release(Room& room, const release::Release& release);

// What everybody who may read it gets, as text; what was tried and what could be worked out, for the lead alone.
Node for_the_lead(const release::Made& made);

}  // namespace lanework::serve
