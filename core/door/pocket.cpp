#include "core/door/pocket.h"

#include <algorithm>
#include <utility>

#include "core/people/permissions.h"

namespace lanework::door {
namespace {

bool of_squad(const people::Player& player, const session::Squad& squad) {
  return squad.in_roster.empty() ||
         std::find(player.squads.begin(), player.squads.end(), squad.in_roster) != player.squads.end();
}

// By age in years, not by birth; without size, mass or the roster's line.
people::Player without_measures(const people::Player& player, const session::Squad& squad, Date day) {
  people::Player out;
  out.id = player.id;
  out.name = player.name;
  out.shirt = player.shirt;
  out.stated_age = people::age_on(player, day);
  if (!squad.in_roster.empty()) out.squads = {squad.in_roster};
  out.contact_ok = player.contact_ok;
  return out;
}

Node without(const Node& table, const std::vector<std::string_view>& keys) {
  Node out = Node::make_table();
  for (const auto& [key, value] : table.entries) {
    if (std::find(keys.begin(), keys.end(), key) == keys.end()) out.set(key, value);
  }
  return out;
}

}  // namespace

Result<EveningDocuments> pocket_documents(EveningDocuments documents) {
  const auto catalogue = catalogue::read_catalogue(documents.catalogue);
  if (!catalogue) return read_evening(std::move(documents)).faults();
  return pocket_documents(std::move(documents), catalogue.value());
}

Result<EveningDocuments> pocket_documents(EveningDocuments documents, const catalogue::Catalogue& catalogue) {
  auto read = read_evening(documents, catalogue);
  if (!read) return read.faults();
  const EveningMatter& matter = read.value();
  std::vector<people::Player> own;
  for (const people::Player& player : matter.roster) {
    if (of_squad(player, matter.squad)) own.push_back(player);
  }
  const auto permissions =
      people::permissions_of(matter.restrictions, own, matter.squad.partners, matter.squad.date, matter.catalogue);
  if (!permissions) return permissions.faults();
  documents.permissions = Document{"permissions", people::write_permissions(permissions.value(), matter.catalogue)};
  documents.held_back.reset();
  documents.restrictions = Document{"restrictions", Node::make_table()};
  documents.squad.root = without(documents.squad.root, {"partners", "restrictions"});
  documents.roster.clear();
  for (const people::Player& player : own) {
    documents.roster.push_back(without_measures(player, matter.squad, matter.squad.date));
  }
  return documents;
}

}  // namespace lanework::door
