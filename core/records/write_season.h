// A season back to its four sheets in canonical form: our headings in our order, keys of terms, ISO dates, decimal
// points, commas between cells, lines that end in a line feed. Reading them gives the same season again.
#pragma once

#include <string>

#include "core/records/season.h"
#include "core/records/terms.h"

namespace lanework::records {

struct CanonicalFiles {
  std::string squads;
  std::string hours;  // what the stream of hours takes
  std::string injuries;
  std::string players;  // headings alone where nobody keeps the sheet
};

CanonicalFiles canonical_files(const Season& season, const Terms& terms);

// The first line of the canonical file of hours, without its line feed.
std::string canonical_hours_heading();

}  // namespace lanework::records
