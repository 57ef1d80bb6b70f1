// Rates of small squads drawn towards the whole, with limits that know that the gamma distribution of true rates is
// itself only guessed from the squads at hand.
//
// The plug-in limits of gamma_poisson.h take it as known; with 24 squads they held the truth in 82 of 100 (simulated in
// tests/evidence/coverage_test.cpp). Here the gammas that may be are weighed by their marginal likelihood, all standard
// deviations of true rates up to 1.5 of the mean (or three times the best fitting one) as likely beforehand: own
// judgement. (Full instead of empirical Bayes: Gelman A, Bayesian Anal 2006, doi 10.1214/06-BA117A, on such priors;
// from memory.)
#pragma once

#include <span>
#include <vector>

#include "core/evidence/gamma_poisson.h"

namespace lanework::evidence {

// In the order of the squads. REQUIRES: two squads, an event at least among them.
std::vector<Shrunken> shrunken_rates(std::span<const SquadCount> squads, double level);

}  // namespace lanework::evidence
