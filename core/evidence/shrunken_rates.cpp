#include "core/evidence/shrunken_rates.h"

#include <algorithm>
#include <array>
#include <boost/math/special_functions/gamma.hpp>
#include <cmath>

#include "core/evidence/find_root.h"

namespace lanework::evidence {
namespace {

constexpr int kLooks = 40;    // to find where the gammas that may be lie
constexpr int kSpreads = 12;  // taken from there
constexpr double kMostDeviation = 1.5;
constexpr double kTimesTheBest = 3;
// By the logarithm of its weight less than the likeliest: not looked at.
constexpr double kUnlikely = 9;
// Of a normal distribution: three points that give its mean and variance.
constexpr std::array<std::array<double, 2>, 3> kMeans = {
    {{-1.7320508075688772, 1.0 / 6}, {0, 2.0 / 3}, {1.7320508075688772, 1.0 / 6}}};

struct Weighed {
  GammaPrior prior;
  double weight = 0;
};

// One standard deviation of true rates with the mean that fits it.
struct Looked {
  GammaPrior best;
  double information = 0;  // of the logarithm of the mean
  double log_weight = 0;   // the likelihood, its mean summed over
};

Looked look(std::span<const SquadCount> squads, double deviation) {
  Looked out;
  out.best.spread = deviation * deviation;
  out.best.mean = mean_with_spread(squads, out.best.spread);
  for (const SquadCount& squad : squads) {
    const double own = out.best.mean * squad.expected;
    out.information += own / (1 + out.best.spread * own);
  }
  out.log_weight = twice_log_likelihood(squads, out.best) / 2 - std::log(out.information) / 2;
  return out;
}

std::vector<Looked> look_at(std::span<const SquadCount> squads, double from, double to, int count) {
  std::vector<Looked> out;
  for (int i = 0; i < count; ++i) out.push_back(look(squads, from + (to - from) * (i + 0.5) / count));
  return out;
}

// The deviations that are not unlikely: a range of those looked at, and a step to each side.
std::array<double, 2> likely_range(std::span<const SquadCount> squads, double from, double to) {
  const std::vector<Looked> looked = look_at(squads, from, to, kLooks);
  double highest = looked.front().log_weight;
  for (const Looked& one : looked) highest = std::max(highest, one.log_weight);
  const auto likely = [&](const Looked& one) { return one.log_weight > highest - kUnlikely; };
  const auto first = std::find_if(looked.begin(), looked.end(), likely) - looked.begin();
  const auto last = looked.rend() - std::find_if(looked.rbegin(), looked.rend(), likely);  // one past it
  const double step = (to - from) / kLooks;
  return {std::max(from, from + step * (static_cast<double>(first) - 1)),
          std::min(to, from + step * (static_cast<double>(last) + 1))};
}

// The gammas that may be.
std::vector<Weighed> gammas(std::span<const SquadCount> squads) {
  const double most = std::max(kMostDeviation, kTimesTheBest * std::sqrt(fit_gamma_prior(squads).spread));
  const auto [from, to] = likely_range(squads, 0, most);
  // Once more: with many squads the range is a small part of what was looked at.
  const auto [low, high] = likely_range(squads, from, to);
  const std::vector<Looked> taken = look_at(squads, low, high, kSpreads);
  double highest = taken.front().log_weight;
  for (const Looked& one : taken) highest = std::max(highest, one.log_weight);
  std::vector<Weighed> out;
  for (const Looked& one : taken) {
    for (const auto& [off, share] : kMeans)
      out.push_back({{one.best.mean * std::exp(off / std::sqrt(one.information)), one.best.spread},
                     share * std::exp(one.log_weight - highest)});
  }
  return out;
}

struct Component {
  double shape = 0;
  double rate = 0;
  double weight = 0;
};

double quantile(const std::vector<Component>& components, double share) {
  double all = 0;
  double most = 0;
  for (const Component& one : components) {
    all += one.weight;
    most = std::max(most, (one.shape + 10 * std::sqrt(one.shape) + 30) / one.rate);
  }
  return find_root(
      [&](double rate) {
        double below = 0;
        for (const Component& one : components) below += one.weight * boost::math::gamma_p(one.shape, one.rate * rate);
        return below - share * all;
      },
      0, most);
}

}  // namespace

std::vector<Shrunken> shrunken_rates(std::span<const SquadCount> squads, double level) {
  const std::vector<Weighed> priors = gammas(squads);
  std::vector<Shrunken> out;
  for (const SquadCount& squad : squads) {
    std::vector<Component> components;
    double all = 0;
    Shrunken shrunken;
    for (const auto& [prior, weight] : priors) {
      const Component one{prior.shape() + static_cast<double>(squad.events), prior.rate() + squad.expected, weight};
      components.push_back(one);
      all += weight;
      shrunken.estimate += weight * one.shape / one.rate;
      shrunken.weight_of_own += weight * squad.expected / one.rate;
    }
    shrunken.estimate /= all;
    shrunken.weight_of_own /= all;
    shrunken.limits = {quantile(components, (1 - level) / 2), quantile(components, (1 + level) / 2)};
    out.push_back(shrunken);
  }
  return out;
}

}  // namespace lanework::evidence
