// Everything that a club's folder holds (docs/formats/club.md), as it stands: documents nobody has read yet. Rosters
// and catalogues have the form of those parts of a 'plan' request (docs/formats/door.md).
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "core/base/date.h"
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

// Of a block that has begun.
struct SoFarDocuments {
  Date today;
  // A list of tables, one a session that is told of: squad (id), date, start, happened, did_it, minutes where stated,
  // left_out (ids).
  Node sessions;
  std::optional<Document> standing;  // the answer before
};

struct BlockDocuments {
  Document club;
  std::vector<StripDocument> strips;
  std::vector<Node> catalogues;
  std::vector<Node> rosters;
  std::vector<SquadDocuments> squads;  // by id
  Node reported;                       // what stands of the players' entries, as restrictions
  std::optional<SoFarDocuments> so_far;
};

}  // namespace lanework::check
