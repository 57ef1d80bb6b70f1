#include "core/evidence/mixed/newton.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

namespace lanework::evidence {
namespace {

constexpr int kMostSteps = 100;
constexpr int kMostHalvings = 40;
// A step that is thought to bring so little, as a share of the log likelihood, is the last.
constexpr double kLittle = 1e-14;
// One that is thought to bring this little may be lost in rounding: it is taken unless it falls by more than that.
constexpr double kHardlyAny = 1e-11;
constexpr double kRounding = 1e-13;
// What is added to the bend, as a share of it, where it is not downwards.
constexpr double kFirstBent = 1e-3;

using Matrix = Eigen::Map<const Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>>;

Eigen::VectorXd step_of(const ObjectiveValue& value) {
  const auto count = static_cast<Eigen::Index>(value.gradient.size());
  const Eigen::Map<const Eigen::VectorXd> slope(value.gradient.data(), count);
  const Eigen::MatrixXd down = -Matrix(value.hessian.data(), count, count);
  for (double bent = 0;; bent = bent == 0 ? kFirstBent : 10 * bent) {
    Eigen::MatrixXd tried = down;
    for (Eigen::Index i = 0; i < count; ++i) tried(i, i) += bent * std::max(std::abs(down(i, i)), 1e-8);
    const Eigen::LLT<Eigen::MatrixXd> factors(tried);
    if (factors.info() == Eigen::Success) return factors.solve(slope);
    if (bent > 1e12) return slope;
  }
}

}  // namespace

Highest climb(const std::function<ObjectiveValue(const std::vector<double>&)>& function, std::vector<double> start) {
  Highest out;
  out.at = std::move(start);
  out.value = function(out.at);
  ++out.evaluations;
  for (; out.steps < kMostSteps; ++out.steps) {
    const Eigen::VectorXd step = step_of(out.value);
    out.left_to_gain = 0;
    for (std::size_t i = 0; i < out.at.size(); ++i)
      out.left_to_gain += step(static_cast<Eigen::Index>(i)) * out.value.gradient[i] / 2;
    double share = 1;
    bool moved = false;
    for (int halving = 0; halving < kMostHalvings && !moved; ++halving, share /= 2) {
      std::vector<double> there = out.at;
      for (std::size_t i = 0; i < there.size(); ++i) there[i] += share * step(static_cast<Eigen::Index>(i));
      ObjectiveValue value = function(there);
      ++out.evaluations;
      const double scale = std::max(1.0, std::abs(out.value.log_likelihood));
      const bool last = out.left_to_gain < kLittle * scale;
      const double floor = out.value.log_likelihood - (out.left_to_gain < kHardlyAny * scale ? kRounding * scale : 0);
      if (!(value.log_likelihood > floor) && !(last && std::isfinite(value.log_likelihood))) continue;
      out.at = std::move(there);
      out.value = std::move(value);
      moved = true;
      if (last) {
        out.converged = true;
        ++out.steps;
        return out;
      }
    }
    if (!moved) return out;
  }
  return out;
}

}  // namespace lanework::evidence
