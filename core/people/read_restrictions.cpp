#include "core/people/read_restrictions.h"

#include <algorithm>

#include "core/people/what_is_barred.h"

namespace lanework::people {
namespace {

constexpr int kWhole = 100;

bool among(const std::vector<std::string>& names, const std::string& name) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

// Exactly one of player and squad, and one that is there.
void read_whom(TableReader& reader, const std::vector<std::string>& players, const std::vector<std::string>& squads,
               Restriction& restriction) {
  restriction.player = reader.text_or("player", "");
  restriction.squad = reader.text_or("squad", "");
  if (restriction.player.empty() && restriction.squad.empty()) {
    reader.fault(FaultCode::kMissing, "player", "neither player nor squad", "the id of a player, or a squad");
  } else if (!restriction.player.empty() && !restriction.squad.empty()) {
    reader.fault(FaultCode::kContradiction, "squad", quote(restriction.squad), "no squad where a player is named");
  } else if (!restriction.player.empty() && !among(players, restriction.player)) {
    reader.fault(FaultCode::kUnknownName, "player", quote(restriction.player), "the id of a player of the roster");
  } else if (!restriction.squad.empty() && !among(squads, restriction.squad)) {
    reader.fault(FaultCode::kUnknownName, "squad", quote(restriction.squad), "a squad of the roster");
  }
}

Restriction read_one(TableReader& reader, const std::vector<std::string>& players,
                     const std::vector<std::string>& squads) {
  Restriction restriction;
  read_whom(reader, players, squads, restriction);
  read_what_is_barred(reader, restriction);
  if (restriction.player.empty() && (restriction.landings_percent < kWhole || !restriction.new_eccentric_ok)) {
    reader.fault(FaultCode::kContradiction,
                 restriction.landings_percent < kWhole ? "landings_percent" : "new_eccentric", "a whole squad",
                 "a player: what is counted is counted for one",
                 "a squad's landings are the planner's: kinds and allowed hold them back");
  }
  reader.finish();
  return restriction;
}

}  // namespace

Result<Restrictions> read_restrictions(const Document& document, const std::vector<std::string>& players,
                                       const std::vector<std::string>& squads) {
  Faults faults;
  TableReader reader(document.file, &document.root, "", faults);
  Restrictions out;
  out.as_known = reader.text_or("as_known", "");
  for (TableReader& table : reader.tables("restriction")) out.list.push_back(read_one(table, players, squads));
  reader.finish();
  if (!faults.empty()) return faults;
  return out;
}

}  // namespace lanework::people
