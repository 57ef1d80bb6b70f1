// What was known of a player before an incident, from a file of entries to words for the clinician.
#pragma once

#include <string>
#include <vector>

#include "app/draw/known_before.h"
#include "app/read/reported.h"
#include "core/base/result.h"
#include "core/care/entries/fold.h"
#include "core/care/incident/incident.h"

namespace lanework::cli {

// What was entered, and the rules of pain and return by which it is folded.
struct EnteredFiles {
  std::string entries;
  std::string catalogue;     // a folder in place of the shipped one, or empty
  std::string return_rules;  // a place's own in place of the catalogue's, or empty
};

// The same of entries at hand.
draw::KnownBeforeMatter known_before_matter(const std::vector<care::Entry>& entries, const read::PainAndReturn& rules,
                                            const care::Incident& incident, const care::Ages& ages);

Result<draw::KnownBeforeMatter> known_before_matter(const EnteredFiles& files, const care::Incident& incident,
                                                    const care::Ages& ages);

}  // namespace lanework::cli
