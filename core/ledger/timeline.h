// What is kept of one player, line by line in the order in which it was received, for a guardian's question: what was
// known, and when, and what was done.
#pragma once

#include <string>
#include <vector>

#include "core/ledger/entry.h"

namespace lanework::ledger {

// '2026-11-26 18:05' of '2026-11-26T18:05:00+01:00': moments of one clock, to be read, and compared as texts.
std::string minute_of(const std::string& stamp);

struct TimelineLine {
  std::string received;  // the receiver's clock with its offset
  std::string what;  // 'soreness: place knee; before 3', with the words of the ledger's table; a consent in plain ones
  std::string author;  // the account
  Role role = Role::kCoach;
};

// about: what was entered about the player (Store::entries_about). Nothing is left out, corrections included.
std::vector<TimelineLine> entered_about(const std::vector<Received>& about);

// evenings: entries of some days. The sessions whose attendance names the player, and how they went.
std::vector<TimelineLine> counted_at(const std::vector<Received>& evenings, const std::string& player,
                                     const KindTable& kinds);

}  // namespace lanework::ledger
