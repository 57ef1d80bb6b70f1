// What was known of a player before an incident, from a file of entries to words for the clinician.
#pragma once

#include <string>

#include "app/draw/known_before.h"
#include "core/base/result.h"
#include "core/care/entries/fold.h"
#include "core/care/incident/incident.h"

namespace lanework::cli {

// catalogue: a folder in place of the shipped one, or empty: its pain and return rules fold the entries.
Result<draw::KnownBeforeMatter> known_before_matter(const std::string& entries_file, const std::string& catalogue,
                                                    const care::Incident& incident, const care::Ages& ages);

}  // namespace lanework::cli
