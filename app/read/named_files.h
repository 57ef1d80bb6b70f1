// The files that a squad file or a club file names: where they may lie, and how a roster is to be read.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "app/read/read_roster.h"
#include "core/base/document.h"
#include "core/base/result.h"

namespace lanework::read {

bool ends_with(const std::string& text, std::string_view ending);

// Where a key of the document stands; the document's first line where it does not.
Place place_of(const Document& document, std::string_view key);

// The text under a key; a missing or wrong one is a fault when it is required.
std::optional<std::string> named_in(const Document& document, std::string_view key, bool required, Faults& faults);

// A file name of the document to a path. A squad file may lie in a folder of its own inside the club's
// (../roster.csv), so it may lead 'up' that many folders; a name that leads further out is a fault.
std::optional<std::string> path_inside(const Document& document, std::string_view key, const std::string& name, int up,
                                       Faults& faults);

// Puts the path in place of the name of the venue's file that a strip names, where it names one.
void find_venue(Document& strip, int up, Faults& faults);

// How the roster's file is to be read, from the squad file; squad is its in_roster.
RosterStatement roster_statement(const Document& squad, Faults& faults);
// Takes out the keys that only the reader of files knows.
void forget_roster_statements(Document& squad);

}  // namespace lanework::read
