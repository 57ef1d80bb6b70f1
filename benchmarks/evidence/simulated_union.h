// A union of clubs, invented from a seed: squads within clubs, a season of weeks each, counts with and without more
// than chance. The columns are those that club data have: warm-ups, ages, sex, the share of matches, a curve of the
// week.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "core/evidence/mixed/frame.h"

namespace lanework::bench {

struct SimulatedUnion {
  evidence::Frame frame;              // with clubs; events of a Poisson model
  std::vector<double> uneven_events;  // negative binomial, size 1.5
};

SimulatedUnion simulate_union(std::size_t clubs, std::size_t squads_a_club, std::size_t weeks);

// The rows as CSV: y, ynb, hours, club, squad and the columns c1, c2, ...
std::string to_csv(const SimulatedUnion& made);

}  // namespace lanework::bench
