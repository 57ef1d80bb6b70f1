// The turn of a season: the same club a year on. Every player goes one age band up with the squad, who is too old for
// the new band goes where the age fits, squads are renamed by band, and what a squad was taught goes where most of its
// players go. docs/formats/club.md has the rules in full.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/club/read_club.h"
#include "core/club/turn_told.h"

namespace lanework::club {

struct NextSeason {
  Document club;                                         // club.toml
  std::vector<std::pair<std::string, Document>> squads;  // id and file, by id
  std::vector<people::Player> roster;                    // everybody who still has a squad, by the old rosters' order
  Document restrictions;                                 // of those players and squads
  std::optional<Document> coaches;                       // coaches.toml, where there is one
  std::vector<TurnTold> told;                            // what was done; players by id
};

// documents and club: of a folder without faults. Squad files name ../roster.csv and ../restrictions.toml.
NextSeason turn_season(const ClubDocuments& documents, const Club& club);

}  // namespace lanework::club
