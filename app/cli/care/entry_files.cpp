#include "app/cli/care/entry_files.h"

#include <algorithm>

#include "app/cli/evening_flags.h"
#include "app/read/files.h"
#include "app/read/read_roster.h"

namespace lanework::cli {
Result<read::PainAndReturn> read_care_rules(const std::string& catalogue, const std::string& return_rules) {
  const auto folder = catalogue_folder(catalogue);
  if (!folder) return folder.faults();
  return read::read_care_rules({folder.value(), return_rules, {}});
}

std::string FoldedEntries::named(const std::string& player) const {
  const auto found = std::find_if(roster.begin(), roster.end(), [&](const auto& one) { return one.id == player; });
  return found == roster.end() ? player : player + " " + found->name;
}

Result<FoldedEntries> fold_entry_files(const EntryFiles& files, Date day) {
  auto rules = read_care_rules(files.catalogue, files.return_rules);
  if (!rules) return rules.faults();
  FoldedEntries out{std::move(rules).value(), {}, {}};
  std::vector<std::string> ids;
  if (!files.roster.empty()) {
    const auto bytes = read::read_file(files.roster);
    if (!bytes) return bytes.faults();
    read::RosterStatement stated;
    stated.whole_club = true;
    auto roster = read::read_roster(files.roster, bytes.value(), day, stated);
    if (!roster) return roster.faults();
    out.roster = std::move(roster).value();
  }
  for (const people::Player& player : out.roster) ids.push_back(player.id);
  auto known = read::fold_entries_file({files.entries, {}}, out.rules, read::ages_on(out.roster, day), ids);
  if (!known) return known.faults();
  out.known = std::move(known).value();
  return out;
}

}  // namespace lanework::cli
