#include "app/cli/care/entry_files.h"

#include <algorithm>
#include <filesystem>

#include "app/cli/evening_flags.h"
#include "app/read/files.h"
#include "app/read/read_roster.h"
#include "core/care/entries/read_entries.h"
#include "core/care/pain/read_pain_rule.h"
#include "core/care/return_to_sport/read_return_rules.h"
#include "core/catalogue/read_catalogue.h"

namespace lanework::cli {
namespace {

template <class T>
void collect(const Result<T>& result, Faults& faults) {
  if (!result) faults.insert(faults.end(), result.faults().begin(), result.faults().end());
}

}  // namespace

Result<PainAndReturn> read_care_rules(const std::string& catalogue, const std::string& return_rules) {
  const auto folder = catalogue_folder(catalogue);
  if (!folder) return folder.faults();
  const auto documents = read::read_catalogue_folders({folder.value()});
  if (!documents) return documents.faults();
  const auto whole = catalogue::read_catalogue(documents.value());
  if (!whole) return whole.faults();
  const std::filesystem::path care = std::filesystem::path(folder.value()) / "care";
  const auto pain = read::read_toml_file((care / "pain.toml").string());
  const auto returns =
      read::read_toml_file(return_rules.empty() ? (care / "return_rules.toml").string() : return_rules);
  Faults faults;
  collect(pain, faults);
  collect(returns, faults);
  if (!faults.empty()) return faults;
  auto pain_rule = care::read_pain_rule(pain.value(), whole.value().sources);
  auto rules = care::read_return_rules(returns.value(), whole.value().sources);
  collect(pain_rule, faults);
  collect(rules, faults);
  if (!faults.empty()) return faults;
  return PainAndReturn{std::move(pain_rule).value(), std::move(rules).value()};
}

Result<care::Knowledge> fold_entries_file(const std::string& path, const PainAndReturn& rules, const care::Ages& ages,
                                          const std::vector<std::string>& players) {
  const auto document = read::read_toml_file(path);
  if (!document) return document.faults();
  auto entries = care::read_entries(document.value(), rules.returns, players);
  if (!entries) return entries.faults();
  return care::fold(std::move(entries).value(), rules.pain, rules.returns, ages);
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
  care::Ages ages;
  if (!files.roster.empty()) {
    const auto bytes = read::read_file(files.roster);
    if (!bytes) return bytes.faults();
    read::RosterStatement stated;
    stated.whole_club = true;
    auto roster = read::read_roster(files.roster, bytes.value(), day, stated);
    if (!roster) return roster.faults();
    out.roster = std::move(roster).value();
  }
  for (const people::Player& player : out.roster) {
    ids.push_back(player.id);
    if (const auto age = people::age_on(player, day)) ages.emplace(player.id, *age);
  }
  auto known = fold_entries_file(files.entries, out.rules, ages, ids);
  if (!known) return known.faults();
  out.known = std::move(known).value();
  return out;
}

}  // namespace lanework::cli
