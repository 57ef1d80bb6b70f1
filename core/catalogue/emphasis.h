// What a club lays stress on for a season: emphasis.toml of its folder (docs/formats/club.md), which the lead has
// accepted or written. It moves weights of families by one step at most; the planner then minds a short dose of them
// more, or less.
#pragma once

#include "core/base/date.h"
#include "core/base/document.h"
#include "core/base/result.h"

namespace lanework::catalogue {

inline constexpr int kLeastWeight = 1;  // of a family
inline constexpr int kMostWeight = 8;
inline constexpr int kEmphasisStep = 1;  // at most so far from the catalogue's weight; own judgement

// Of one family.
struct Emphasis {
  int catalogue_weight;  // in whose place the club's stands
  Date from;             // the season it rests on
  Date to;               // its last day
};

// Puts the weights of an emphasis file into families.toml's document: each row whose weight changes has the club's and
// a table 'emphasis' that says what stood there, so that whoever reads the families, here or in a JSON request, sees
// both. Faults: an unknown family, a weight further off than one step, dates that lack or stand the wrong way round;
// then nothing is changed. Rows that cannot be read are left to read_catalogue.
Faults put_emphasis(const Document& emphasis, Document& families);

}  // namespace lanework::catalogue
