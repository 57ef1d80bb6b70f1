// Many small squads at once: each squad's true rate is thought of as a draw from one gamma distribution, fitted to all
// of them, and its own count moves it away from there as far as its hours carry.
//
// The gamma is found by maximum marginal likelihood (negative binomial), as in Clayton D, Kaldor J, Biometrics 1987,
// doi 10.2307/2532003. The intervals are of each squad's rate with that gamma taken as known: with few squads they are
// too short (shrunken_rates.h has others).
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "core/evidence/interval.h"

namespace lanework::evidence {

struct SquadCount {
  std::int64_t events = 0;
  double expected = 0;  // > 0: hours, or events expected from them
};

// Rates per unit of 'expected'.
struct GammaPrior {
  double mean = 0;
  // Of true rates, as a share of the mean, squared: 0 where the counts vary no more than chance would have them.
  double spread = 0;
  [[nodiscard]] double shape() const { return 1 / spread; }
  [[nodiscard]] double rate() const { return 1 / (spread * mean); }
};

struct Shrunken {
  double estimate = 0;
  Interval limits;
  double weight_of_own = 0;  // 0 .. 1: of the squad's own rate, the rest is the mean's
};

// REQUIRES: at least one event among them.
GammaPrior fit_gamma_prior(std::span<const SquadCount> squads);
// The mean that fits best where true rates are spread so.
double mean_with_spread(std::span<const SquadCount> squads, double spread);
// Twice the logarithm of the marginal likelihood, the counts' factorials included.
double twice_log_likelihood(std::span<const SquadCount> squads, const GammaPrior& prior);
// In the order of the squads.
std::vector<Shrunken> shrink(std::span<const SquadCount> squads, const GammaPrior& prior, double level);

}  // namespace lanework::evidence
