// A season's sheets with a description of every column, as one ZIP, for programs that others wrote
// (docs/formats/ledger.md).
#pragma once

#include <string>

#include "app/cli/ledger/season_sheets.h"

namespace lanework::cli {

// What the columns of those sheets are (Frictionless Data). left_out: what the sheets do not have and why, in
// sentences; may be empty.
std::string season_descriptor(const std::string& club, const ledger::SheetDays& days, const std::string& left_out);

Result<std::string> season_package(const std::string& club, const ledger::SheetDays& days, const std::string& left_out,
                                   const SeasonSheets& sheets);

}  // namespace lanework::cli
