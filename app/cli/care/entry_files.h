// The rules of care, a document of entries and a roster, read from disk and folded to what stands.
#pragma once

#include <string>
#include <vector>

#include "app/read/reported.h"
#include "core/base/result.h"
#include "core/people/player.h"

namespace lanework::cli {

// catalogue: a folder in place of the shipped one, or empty; return_rules: a file in place of the catalogue's, or
// empty.
Result<read::PainAndReturn> read_care_rules(const std::string& catalogue, const std::string& return_rules = {});

struct EntryFiles {
  std::string entries;
  std::string roster;  // may be empty: then players are not held against any, and no age is known but the entries' own
  std::string catalogue;
  std::string return_rules;
};

struct FoldedEntries {
  read::PainAndReturn rules;
  care::Knowledge known;
  std::vector<people::Player> roster;

  // 'Q14 Ann Example', or the id alone.
  [[nodiscard]] std::string named(const std::string& player) const;
};

// day: ages are reckoned for it.
Result<FoldedEntries> fold_entry_files(const EntryFiles& files, Date day);

// Under every answer.
inline constexpr const char* kWhoDecides =
    "Nothing here is a diagnosis or clears anybody. Local rules and licensed practice come first.\n";

}  // namespace lanework::cli
