// What stands of players, worked out from the ledger: who joins in, who joins in with swaps, who sits out, and what the
// coach is told. What cannot be understood holds back as a hurt at an unknown place; it never makes the rest
// unreadable.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/serve/house.h"

namespace lanework::serve {

// What a coach or the lead said of a player that still holds the player back.
struct Reported {
  bool hurt = false;  // else sore
  Date day;           // when it came in
};

struct PlayerStanding {
  std::string player;
  std::string word;                       // 'joins in', 'joins in with swaps', 'sits out, see a clinician'
  std::vector<std::string> instructions;  // the coach's words
  std::optional<Date> until;              // the last day of all of it, where each has one
  std::optional<Date> review;             // the first day on which some of it is to be looked at again
  std::vector<std::string> reasons;       // for the lead
  std::optional<Reported> reported = {};  // the latest of them; of two on one day the hurt
};

struct SquadStanding {
  std::vector<PlayerStanding> players;  // in the order asked for, also those with nothing against them
  std::string known_at;                 // of the latest entry; empty: nothing was ever entered about them
};

// Everything that was entered about these players.
Result<std::vector<ledger::Received>> entries_about(Room& room, const House& house,
                                                    const std::vector<std::string>& players);

Result<SquadStanding> standing_of(Room& room, const House& house, const std::vector<std::string>& players, Date day);

// The same from entries at hand.
SquadStanding standing_from(std::vector<ledger::Received> entries, const ledger::KindTable& kinds,
                            const CareRules& rules, const std::vector<std::string>& players, Date day);

}  // namespace lanework::serve
