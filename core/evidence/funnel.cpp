#include "core/evidence/funnel.h"

#include <algorithm>
#include <boost/math/special_functions/gamma.hpp>
#include <cmath>
#include <vector>

namespace lanework::evidence {

double funnel_limit(double expected, double share) {
  // The least count that is not passed with this chance; P(X <= count) = Q(count + 1, mean).
  double count = 0;
  while (boost::math::gamma_q(count + 1, expected) < share) ++count;
  const double over = boost::math::gamma_q(count + 1, expected) - share;
  const double own = boost::math::gamma_p_derivative(count + 1, expected);
  return std::max(0.0, (count - over / own) / expected);
}

OverDispersion over_dispersion(std::span<const SquadCount> squads) {
  std::vector<double> scores;
  for (const SquadCount& squad : squads)
    scores.push_back(2 * (std::sqrt(static_cast<double>(squad.events)) - std::sqrt(squad.expected)));
  std::sort(scores.begin(), scores.end());
  const std::size_t drawn_in = scores.size() / 10;
  double sum = 0;
  for (std::size_t i = 0; i < scores.size(); ++i) {
    const double score = scores[std::clamp(i, drawn_in, scores.size() - 1 - drawn_in)];
    sum += score * score;
  }
  const auto count = static_cast<double>(scores.size());
  OverDispersion out;
  out.factor = sum / count;
  // Two standard deviations of the mean of so many squared normal scores.
  out.beyond_chance = out.factor > 1 + 2 * std::sqrt(2 / count);
  return out;
}

double widened_limit(double expected, double share, const OverDispersion& dispersion) {
  const double limit = funnel_limit(expected, share);
  if (!dispersion.beyond_chance) return limit;
  return std::max(0.0, 1 + (limit - 1) * std::sqrt(dispersion.factor));
}

}  // namespace lanework::evidence
