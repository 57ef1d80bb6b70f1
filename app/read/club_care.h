// The table 'care' of club.toml (docs/formats/club.md): what was reported of players, the place's own return rules, and
// whose tables of weather hold.
#pragma once

#include <optional>
#include <string>

#include "core/base/document.h"
#include "core/base/result.h"

namespace lanework::read {

struct ClubCare {
  std::optional<std::string> entries;       // path
  std::optional<std::string> return_rules;  // path; else the catalogue's
  std::string region;                       // empty: the tables' default
  Place entries_place;
  Place return_rules_place;
  Place region_place;
};

// Nothing stated where there is no such table. File names stay in the club's folder. Unknown keys are told where the
// settings are read.
ClubCare club_care(const Document& club, Faults& faults);

// Of the club's folder that a squad file lies in; nothing stated where it lies in none. Unknown keys are
// faults here: what is misspelt holds nobody back.
Result<ClubCare> club_care_above(const std::string& squad_path);

}  // namespace lanework::read
