#include "core/evidence/power_by_simulation.h"

#include <boost/math/distributions/binomial.hpp>
#include <boost/random/normal_distribution.hpp>
#include <boost/random/poisson_distribution.hpp>
#include <cmath>
#include <vector>

#include "core/evidence/clustered_ratio.h"
#include "core/evidence/random_engine.h"

namespace lanework::evidence {
namespace {

std::vector<Exposed> draw_arm(const PlayedDesign& played, double rate, RandomEngine& engine) {
  // Of a log-normal whose standard deviation is so large a share of its mean, which is 1.
  const double log_variance = std::log1p(played.design.variation * played.design.variation);
  boost::random::normal_distribution<double> log_effect(-log_variance / 2, std::sqrt(log_variance));
  std::vector<Exposed> arm;
  for (int squad = 0; squad < played.squads_an_arm; ++squad) {
    const double own = rate * std::exp(log_variance > 0 ? log_effect(engine) : 0);
    boost::random::poisson_distribution<std::int64_t, double> events(own * played.design.hours_a_cluster);
    arm.push_back({events(engine), played.design.hours_a_cluster});
  }
  return arm;
}

bool any_event(const std::vector<Exposed>& arm) {
  for (const Exposed& squad : arm)
    if (squad.events > 0) return true;
  return false;
}

}  // namespace

PlayedPower power_by_simulation(const PlayedDesign& played, double level) {
  PlayedPower out;
  int seen = 0;
  for (int time = 0; time < played.times; ++time) {
    RandomEngine engine(played.seed, 0, 0, static_cast<std::uint32_t>(time));
    const std::vector<Exposed> one = draw_arm(played, played.design.rate, engine);
    const std::vector<Exposed> other = draw_arm(played, played.design.other_rate, engine);
    if (!any_event(one) || !any_event(other)) {
      ++out.too_few;
      continue;
    }
    if (clustered_ratio(one, other, level).tested.p < 1 - level) ++seen;
  }
  using Binomial = boost::math::binomial;
  out.power = static_cast<double>(seen) / played.times;
  out.limits = {Binomial::find_lower_bound_on_p(played.times, seen, (1 - kUsualLevel) / 2),
                Binomial::find_upper_bound_on_p(played.times, seen, (1 - kUsualLevel) / 2)};
  return out;
}

}  // namespace lanework::evidence
