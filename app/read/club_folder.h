// A club's folder (docs/formats/club.md): club.toml, squads/*.toml, and every file they name.
#pragma once

#include <string>

#include "core/base/document.h"
#include "core/club/read_club.h"

namespace lanework::read {

struct ClubFolder {
  club::ClubDocuments documents;
  club::Club club;
  Faults faults;
};

// Everything of the folder as one club, and one list of the faults of all files. shipped_catalogue: the folder of the
// shipped catalogue, with routines/. File names in club.toml stay in the folder; those in a squad file in the folder of
// the squad file, the one above, or below. Ages are reckoned for the block's first Monday; without one nothing but
// club.toml is read. A file that several squads name is read once.
ClubFolder read_club_folder(const std::string& folder, const std::string& shipped_catalogue);

// The same with what a ledger knows of players besides: the entries of 'entry' (docs/formats/entries.md), read with
// caution. What either the folder's entries or these hold back is held back.
ClubFolder read_club_folder(const std::string& folder, const std::string& shipped_catalogue, const Node& entries);

}  // namespace lanework::read
