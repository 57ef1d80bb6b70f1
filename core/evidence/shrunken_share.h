// A share of all events, drawn towards its usual one: shares of kinds are thought of as a draw from a Dirichlet
// distribution about the usual shares, so that one kind's has a beta distribution, and the counts move it away from
// there as far as they carry (Dirichlet-multinomial; Gelman A et al., Bayesian Data Analysis, from memory).
#pragma once

#include <cstdint>

#include "core/evidence/interval.h"

namespace lanework::evidence {

struct UsualShare {
  double share = 0;   // > 0 and < 1
  double weighs = 0;  // > 0: as many events as this says as much as the usual share does
};

struct ShrunkenShare {
  double estimate = 0;
  Interval limits;
};

// REQUIRES: 0 <= count <= of. One more of the kind (count and of) never lowers the estimate or a limit.
ShrunkenShare shrunken_share(std::int64_t count, std::int64_t of, const UsualShare& usual, double level);

}  // namespace lanework::evidence
