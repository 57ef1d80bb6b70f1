#include "core/evidence/cusum.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

namespace lanework::evidence {
namespace {

// Where the sum stands after a count, not below 0; at or above the decision limit it is the alarm.
int next_state(const CusumScheme& scheme, int state, std::int64_t count) {
  const std::int64_t change = std::int64_t{scheme.parts} * count - scheme.reference;
  const std::int64_t next = state + (scheme.watch == Watch::kMore ? change : -change);
  return static_cast<int>(std::clamp<std::int64_t>(next, 0, scheme.decision));
}

// Counts beyond this leave the state at an end of its range, whatever they are.
int last_count(const CusumScheme& scheme) { return (scheme.decision + scheme.reference) / scheme.parts + 1; }

}  // namespace

double reference_value(double usual_mean, double changed_mean) {
  return (changed_mean - usual_mean) / (std::log(changed_mean) - std::log(usual_mean));
}

std::vector<double> cusum_path(const CusumScheme& scheme, std::span<const std::int64_t> counts, int start) {
  std::vector<double> path;
  int state = start;
  for (const std::int64_t count : counts) {
    const std::int64_t change = std::int64_t{scheme.parts} * count - scheme.reference;
    const std::int64_t next = std::max<std::int64_t>(0, state + (scheme.watch == Watch::kMore ? change : -change));
    path.push_back(static_cast<double>(next) / scheme.parts);
    state = next >= scheme.decision ? 0 : static_cast<int>(next);
  }
  return path;
}

double run_length(const CusumScheme& scheme, double mean, int start) {
  const int states = scheme.decision;
  const int last = last_count(scheme);
  // Row i: 1 = time(i) - sum of chances to go on x time there.
  Eigen::MatrixXd system = Eigen::MatrixXd::Identity(states, states);
  for (int state = 0; state < states; ++state) {
    double left = 1;
    double chance = std::exp(-mean);
    for (int count = 0; count <= last; ++count) {
      const double own = count == last ? left : chance;
      const int next = next_state(scheme, state, count);
      if (next < states) system(state, next) -= own;
      left -= chance;
      chance *= mean / (count + 1);
    }
  }
  const Eigen::VectorXd times = system.partialPivLu().solve(Eigen::VectorXd::Ones(states));
  return times(start);
}

int decision_for(CusumScheme scheme, double usual_mean, double run_length_wanted, int most) {
  const auto long_enough = [&](int decision) {
    scheme.decision = decision;
    return run_length(scheme, usual_mean, 0) >= run_length_wanted;
  };
  // A higher limit is never reached sooner.
  int low = 0;
  int high = 1;
  while (high <= most && !long_enough(high)) {
    low = high;
    high *= 2;
  }
  high = std::min(high, most + 1);
  while (low + 1 < high) {
    const int middle = low + (high - low) / 2;
    (long_enough(middle) ? high : low) = middle;
  }
  return high;
}

}  // namespace lanework::evidence
