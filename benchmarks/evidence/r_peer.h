// The same fits by R's glmmTMB, in a process of its own.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "benchmarks/evidence/simulated_union.h"

namespace lanework::bench {

struct PeerFit {
  std::string model;
  double seconds = 0;
  std::vector<double> coefficients;
};

// Empty where R or glmmTMB is not there.
std::vector<PeerFit> fits_by_r(const SimulatedUnion& made);

}  // namespace lanework::bench
