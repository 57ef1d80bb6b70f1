#include "core/evidence/gamma_poisson.h"

#include <boost/math/special_functions/gamma.hpp>
#include <cmath>

#include "core/evidence/find_root.h"

namespace lanework::evidence {
namespace {

// Where the fit is looked for: a spread of true rates from a ten-thousandth of the mean to a hundred times it.
constexpr double kLeastSpread = 1e-8;
constexpr double kMostSpread = 1e4;

// The slope of the log likelihood in the shape 1 / spread, its mean fitted.
double slope_in_shape(std::span<const SquadCount> squads, double spread) {
  const double shape = 1 / spread;
  const double mean = mean_with_spread(squads, spread);
  double slope = 0;
  for (const SquadCount& squad : squads) {
    const double own = mean * squad.expected;
    const auto events = static_cast<double>(squad.events);
    for (double j = 0; j < events; ++j) slope += 1 / (shape + j);
    slope += (own - events) / (shape + own) - std::log1p(own / shape);
  }
  return slope;
}

// Do the counts vary more than chance would have them? The slope of the log likelihood at no spread.
bool spreads(std::span<const SquadCount> squads) {
  const double mean = mean_with_spread(squads, 0);
  double slope = 0;
  for (const SquadCount& squad : squads) {
    const auto events = static_cast<double>(squad.events);
    const double off = events - mean * squad.expected;
    slope += off * off - events;
  }
  return slope > 0;
}

}  // namespace

// Where its slope is 0.
double mean_with_spread(std::span<const SquadCount> squads, double spread) {
  double events = 0;
  double expected = 0;
  double most = 0;
  for (const SquadCount& squad : squads) {
    events += static_cast<double>(squad.events);
    expected += squad.expected;
    most = std::max(most, static_cast<double>(squad.events) / squad.expected);
  }
  if (spread == 0) return events / expected;
  const auto falls_short = [&](double mean) {
    double sum = 0;
    for (const SquadCount& squad : squads) {
      const double own = mean * squad.expected;
      sum += (own - static_cast<double>(squad.events)) / (1 + spread * own);
    }
    return sum;
  };
  return find_root(falls_short, 0, most);
}

GammaPrior fit_gamma_prior(std::span<const SquadCount> squads) {
  if (!spreads(squads)) return {mean_with_spread(squads, 0), 0};
  // More shape is better until the best, so that the slope falls through 0 as the spread falls.
  const auto too_wide = [&](double log_spread) { return slope_in_shape(squads, std::exp(log_spread)); };
  const double spread = std::exp(find_root(too_wide, std::log(kLeastSpread), std::log(kMostSpread)));
  return {mean_with_spread(squads, spread), spread};
}

double twice_log_likelihood(std::span<const SquadCount> squads, const GammaPrior& prior) {
  double sum = 0;
  for (const SquadCount& squad : squads) {
    const auto events = static_cast<double>(squad.events);
    const double own = prior.mean * squad.expected;
    sum -= std::lgamma(events + 1);
    if (prior.spread == 0) {
      sum += events * std::log(own) - own;
      continue;
    }
    const double shape = prior.shape();
    sum += std::lgamma(events + shape) - std::lgamma(shape) - shape * std::log1p(own / shape);
    if (events > 0) sum += events * std::log(own / (shape + own));
  }
  return 2 * sum;
}

std::vector<Shrunken> shrink(std::span<const SquadCount> squads, const GammaPrior& prior, double level) {
  const double tail = (1 - level) / 2;
  std::vector<Shrunken> out;
  for (const SquadCount& squad : squads) {
    if (prior.spread == 0) {
      out.push_back({prior.mean, {prior.mean, prior.mean}, 0});
      continue;
    }
    const double shape = prior.shape() + static_cast<double>(squad.events);
    const double rate = prior.rate() + squad.expected;
    out.push_back({shape / rate,
                   {boost::math::gamma_p_inv(shape, tail) / rate, boost::math::gamma_q_inv(shape, tail) / rate},
                   squad.expected / rate});
  }
  return out;
}

}  // namespace lanework::evidence
