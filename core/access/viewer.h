// What of an entry, or of a row of a view, one person sees. The one place where rows and fields are let through.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/access/matrix.h"
#include "core/ledger/entry.h"

namespace lanework::access {

// Which squads a player is of; a player of nobody's list is of none, and only the lead sees what is about such.
using SquadsOfPlayer = std::map<std::string, std::vector<std::string>, std::less<>>;

struct Viewer {
  std::string account;
  ledger::Role role = ledger::Role::kCoach;
  std::vector<Charge> charges;
  Date today;
};

Relation relation_of(const Viewer& viewer, std::string_view squad, Date day);

// The squads that an entry is about; empty: none in particular.
std::vector<std::string> squads_of(const ledger::Entry& entry, const ledger::KindTable& kinds,
                                   const SquadsOfPlayer& players);

// To the nearest of several squads; of none: only a lead is charged with what is about no squad.
Relation relation_to_any(const Viewer& viewer, const std::vector<std::string>& squads, Date day);

// The entry's keys that the viewer sees, in the entry's own order, with the receiver's number and time where anything
// is seen; empty: nothing of it. received_on: the day of receipt, in the club's own zone.
std::optional<Node> visible_entry(const ledger::Received& received, Date received_on, const Viewer& viewer,
                                  const Matrix& matrix, const ledger::KindTable& kinds, const SquadsOfPlayer& players);

// The row's keys that the viewer sees; squad: the row's. A key that the matrix does not name is seen by nobody.
Node visible_row(const Node& row, std::string_view squad, const Viewer& viewer, const FieldRules& view);

}  // namespace lanework::access
