// What was reported of players, read from disk and folded to what stands: the entries with the pain rule and the return
// rules that they go by.
#pragma once

#include <string>
#include <vector>

#include "core/base/document.h"
#include "core/base/result.h"
#include "core/care/entries/fold.h"
#include "core/people/player.h"

namespace lanework::read {

struct PainAndReturn {
  care::PainRule pain;
  care::ReturnRules returns;
};

struct CareRuleFiles {
  std::string catalogue;     // the folder of the shipped catalogue
  std::string return_rules;  // a place's own, in place of the catalogue's; may be empty
  Place return_rules_from;   // what names them
};
Result<PainAndReturn> read_care_rules(const CareRuleFiles& files);

struct EntriesFile {
  std::string path;
  Place from;  // what names it
};

// players: ids that entries may name; empty where they are not held against any.
Result<care::Knowledge> fold_entries_file(const EntriesFile& file, const PainAndReturn& rules, const care::Ages& ages,
                                          const std::vector<std::string>& players = {});

// Whole years on a day, of those whose age is known.
care::Ages ages_on(const std::vector<people::Player>& roster, Date day);

}  // namespace lanework::read
