// Everything that a club's folder holds (docs/formats/club.md), as it stands: documents nobody has read yet. Rosters
// and catalogues have the form of those parts of a 'plan' request (docs/formats/door.md).
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "core/base/document.h"

namespace lanework::check {

struct StripDocument {
  std::string id;
  std::string file;  // empty where the strip stands in club.toml
  Document strip;
};

struct SquadDocuments {
  std::string id;
  Document squad;
  Document routine;
  Document match_day_routine;
  Document restrictions;
  std::string strip_file;     // as in StripDocument::file
  std::size_t roster = 0;     // index into BlockDocuments::rosters
  std::size_t catalogue = 0;  // index into BlockDocuments::catalogues
};

struct BlockDocuments {
  Document club;
  std::vector<StripDocument> strips;
  std::vector<Node> catalogues;
  std::vector<Node> rosters;
  std::vector<SquadDocuments> squads;  // by id
};

}  // namespace lanework::check
