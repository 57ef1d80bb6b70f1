// Permissions: what a coach's device holds in place of restrictions, measures and wishes about partners. The same rules
// say what each player does tonight, but a drill is barred by its name, not by where and why, and partners stand in an
// order, not on a scale. docs/formats/permissions.md.
#pragma once

#include <string>
#include <vector>

#include "core/base/document.h"
#include "core/base/result.h"
#include "core/catalogue/catalogue.h"
#include "core/people/player.h"

namespace lanework::people {

struct Permissions {
  Restrictions restrictions;  // each of them barred by name
  PartnerOrders partners;
};

// What holds on some day, of these players and of whole squads. players: as they take part, their consent to contact as
// it is without restrictions. Rows that are over before 'from' are left out. Faults: as those of pair_up.
Result<Permissions> permissions_of(const Restrictions& restrictions, const std::vector<Player>& players,
                                   const PartnerRules& rules, Date from, const catalogue::Catalogue& catalogue);

// players: every id of the roster. A drill, a rung or a player that is not there is a fault, since a row about it would
// silently protect nobody. All faults are collected.
Result<Permissions> read_permissions(const Document& document, const std::vector<std::string>& players,
                                     const catalogue::Catalogue& catalogue);

// A table that read_permissions gives back unchanged.
Node write_permissions(const Permissions& permissions, const catalogue::Catalogue& catalogue);

}  // namespace lanework::people
