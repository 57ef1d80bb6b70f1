// How old the oldest is of each thing that goes by its time (past.h), so that who runs the club sees what comes next;
// and since when the store's key is in use.
#pragma once

#include <cstdint>
#include <string>

#include "app/store/gate.h"

namespace lanework::store {

class Call;

// The day that its time counts from (2026-11-26), and how much there is of that day; empty: nothing is there.
struct OldestDay {
  std::string day;
  std::int64_t count = 0;
};

// The same by the moment: how much is there from the first moment to a day after it.
struct OldestMoment {
  Moment first = 0;
  std::int64_t count = 0;  // 0: nothing is there
};

struct Ages {
  OldestDay evenings;    // of sessions and squads, by the evening; of neither a day nor a person, by their receipt
  OldestDay who_left;    // people on no list, by what was last received about them
  OldestDay kept_aside;  // by their receipt
  OldestMoment plans;    // but for each squad's latest
  OldestMoment read_notes;
  std::string key_first_used;  // a time with its offset, of the first thing that was sealed or entered; empty: nothing
};

// Nothing that Past would leave counts: the newest entry and the newest note stay. O(what is there of the oldest day).
Ages ages_of(Call& call, const std::string& club);

}  // namespace lanework::store
