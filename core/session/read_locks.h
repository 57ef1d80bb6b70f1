// Pins and bans, wherever a file states them: [tonight] and [locks] of a squad file, [[lock]] of a club file; and rungs
// that the lead has confirmed.
#pragma once

#include <string>
#include <vector>

#include "core/base/document.h"
#include "core/catalogue/catalogue.h"
#include "core/session/evening.h"
#include "core/session/weekly.h"

namespace lanework::session {

// The lists under 'pins' and 'bans'; every name is held against the catalogue.
std::vector<Pin> read_pins(TableReader& table, const catalogue::Catalogue& catalogue);
std::vector<std::string> read_bans(TableReader& table, const catalogue::Catalogue& catalogue);

// The tables under 'rung' of a squad file, by drill and then date; each drill once a day.
std::vector<ConfirmedRung> read_rungs(TableReader& root, const catalogue::Catalogue& catalogue);

// A fault where the catalogue has no such drill.
void expect_drill(TableReader& table, std::string_view key, const std::string& id,
                  const catalogue::Catalogue& catalogue);

}  // namespace lanework::session
