// Seasons made up from a seed: every field used, texts with separators, quotation marks and other scripts in them.
#pragma once

#include <cstdint>

#include "core/records/season.h"

namespace lanework::records::test {

struct SeasonSize {
  int squads = 3;
  int exposures = 20;
  int injuries = 10;
  int players = 5;
};

Season generated_season(std::uint64_t seed, const SeasonSize& size);

}  // namespace lanework::records::test
