// What care asks of one evening, folded into the documents that planner, checker, card and slip read: the weather into
// the squad file's slot and tonight, entries and further restrictions into the restrictions, the age of all that
// is known beside them.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/cli/ledger/ledger_folder.h"
#include "app/read/evening_files.h"
#include "core/base/result.h"

namespace CLI {
class App;
}

namespace lanework::cli {

struct CareFlags {
  std::optional<std::string> weather;  // a weather file
  std::string now;                     // the moment it is asked about; empty: when the slot starts
  std::optional<std::string> entries;
  LedgerFlags ledger;  // what was entered there holds too
  std::vector<std::string> more_restrictions;
  std::vector<std::string> sore;  // 'Q05=knee', 'Q05=knee/5'
};

void add_care_flags(CLI::App& command, CareFlags& flags);

// catalogue: the folder. Where the squad file lies in a club's folder, what its club.toml says of care holds too.
std::optional<Faults> fold_care(const CareFlags& flags, const std::string& catalogue, read::EveningFiles& files);

}  // namespace lanework::cli
