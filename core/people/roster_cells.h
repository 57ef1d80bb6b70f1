// Single rows and cells of a roster: which rows are players, how a name is put together, lists of squads,
// yes and no.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/people/roster_headings.h"
#include "core/people/roster_sheet.h"

namespace lanework::people {

// The cell under a heading; an empty one where the row ends before it.
SheetCell cell_at(const SheetRow& row, const Heading& heading);

// The rows below the headings that hold a player: blank rows, totals with what follows them, and repeated
// headings (from page breaks) are passed over.
std::vector<const SheetRow*> player_rows(const Sheet& sheet, const Headings& headings, const TextForms& forms);

// The heading faults about a name stand under.
const Heading& name_heading_of(const Headings& headings);

// The whole name as written, from one column or from given and family name; a line break becomes a blank.
std::string name_in(const SheetRow& row, const Headings& headings);

// 'U13; U14' or 'U13/U14' or 'U13, U14' to its parts.
std::vector<std::string> split_squads(const std::string& text);

// 'yes', 'oui', 'x', '1'; an empty cell is no: nobody has said yes. Empty where it is neither.
std::optional<bool> read_yes_no(const std::string& text, const TextForms& forms);

}  // namespace lanework::people
