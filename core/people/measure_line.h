// Where each player stands on one line of size, so that partners of like size are near each other. The
// values are the lead's; they never leave the pairing.
#pragma once

#include <cstdint>
#include <vector>

#include "core/base/date.h"
#include "core/people/player.h"

namespace lanework::people {

struct MeasureLine {
  std::vector<std::int64_t> place;  // days of age, size group or grams; of each player, in the order handed in
  int without_measure = 0;          // how many were placed by age instead
  int without_age = 0;              // of these how many had no age either: placed by their neighbours in the list
};

// players: in the order of their ids. Who lacks the measure is placed with the players nearest in age who
// have it (the lower middle one of these); who lacks age too, with the nearest neighbour in the list.
// Where nobody has the measure, the line is age.
MeasureLine measure_line(const std::vector<Player>& players, PartnerMeasure measure, Date day);

}  // namespace lanework::people
