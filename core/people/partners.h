// Partners: who stands with whom in pairs. Minimises first the worst, then the total difference of the
// measure the club has chosen, by minimum-cost perfect matching. What comes out is an order of permitted
// partners; no mass, size or ratio leaves this file.
#pragma once

#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/people/player.h"

namespace lanework::people {

// Two players, or three when the number is odd; positions in the list handed in.
struct PartnerGroup {
  std::vector<int> players;
  // Use the non-contact or wall-anchored version: one of them does not do contact, or holds would be uneven.
  bool non_contact = false;
};

struct Partners {
  std::vector<PartnerGroup> groups;         // by first player's position
  std::vector<int> alone;                   // nobody permitted is left for them: wall or coach
  std::vector<std::vector<int>> permitted;  // for each player the others, best first; forbidden ones absent
  std::vector<std::string> notes;           // plain sentences for the coach: what was not known
  std::vector<std::string> group_notes;     // and what whoever has the groups before them sees anyway

  [[nodiscard]] std::vector<std::string> all_notes() const;
};

// Do these two take the non-contact version: one of them does not do contact, or they are too far apart?
bool do_without_contact(const Player& one, const Player& other, PartnerMeasure measure);

// players: those present who take part, 1 or more. day: for ages. The answer depends on the ids, not on the
// order handed in. Faults: nobody, an id twice, a player kept apart from themselves. Forbidden ids that are
// not present are fine. docs/model/partners.md has the levels and the method.
Result<Partners> pair_up(const std::vector<Player>& players, const PartnerRules& rules, Date day);

}  // namespace lanework::people
