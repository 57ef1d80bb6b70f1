// Pins and bans, wherever a file states them: [tonight] and [locks] of a squad file, [[lock]] of a club file.
#pragma once

#include <string>
#include <vector>

#include "core/base/document.h"
#include "core/catalogue/catalogue.h"
#include "core/session/evening.h"

namespace lanework::session {

// The lists under 'pins' and 'bans'; every name is held against the catalogue.
std::vector<Pin> read_pins(TableReader& table, const catalogue::Catalogue& catalogue);
std::vector<std::string> read_bans(TableReader& table, const catalogue::Catalogue& catalogue);

// A fault where the catalogue has no such drill.
void expect_drill(TableReader& table, std::string_view key, const std::string& id,
                  const catalogue::Catalogue& catalogue);

}  // namespace lanework::session
