// The documents of a club's folder to a Club. Reading goes on past every fault, so that one call tells all of them;
// a squad with a fault of its own is left out of the club that comes back.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "core/base/document.h"
#include "core/catalogue/read_catalogue.h"
#include "core/club/club.h"

namespace lanework::club {

// A [[strip]] of club.toml: the strip's own document, from its file or from the table itself.
struct StripDocument {
  std::string id;
  std::string file;  // normal form of the path; empty where the strip stands in club.toml
  Document strip;
  Place place;
  bool readable = true;  // else its file is not there, which is told already
};

struct RosterFile {
  std::string file;
  std::vector<people::Player> players;
};

struct SquadDocuments {
  std::string id;
  Document squad;  // without roster_dates and roster_encoding
  Document routine;
  Document match_day_routine;
  Document restrictions;      // an empty table where the squad file names none
  std::string strip_file;     // in the form of StripDocument::file
  std::size_t roster = 0;     // index into ClubDocuments::rosters
  std::size_t catalogue = 0;  // index into ClubDocuments::catalogues
  bool readable = true;       // else a file it names is not there, which is told already: only its names count
};

struct ClubDocuments {
  Document club;
  std::vector<StripDocument> strips;
  std::vector<catalogue::CatalogueDocuments> catalogues;  // the first is the shipped one
  std::vector<RosterFile> rosters;
  std::vector<SquadDocuments> squads;
  std::optional<Document> coaches;              // coaches.toml, where there is one
  std::vector<std::string> reported_of_nobody;  // ids in the entries that no roster has
  Document reported;  // what stands of the players' entries, as restrictions; an empty table without any
};

struct ClubReading {
  Club club;
  Faults faults;
};
ClubReading read_club(const ClubDocuments& documents);

}  // namespace lanework::club
