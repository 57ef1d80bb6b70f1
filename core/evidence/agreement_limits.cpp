#include "core/evidence/agreement_limits.h"

#include <algorithm>
#include <boost/math/distributions/chi_squared.hpp>
#include <boost/math/special_functions/gamma.hpp>
#include <vector>

#include "core/evidence/find_root.h"

namespace lanework::evidence {
namespace {

// Shares at which the spreads of the residual and of the raters are looked at. The raters' has the longer tail.
constexpr std::size_t kResidualShares = 24;
constexpr std::size_t kRaterShares = 96;

// Chi-squared numbers at the middles of equal shares.
std::vector<double> chi_squared_at_shares(double degrees, std::size_t shares) {
  std::vector<double> out;
  const boost::math::chi_squared spread(degrees);
  for (std::size_t i = 0; i < shares; ++i)
    out.push_back(boost::math::quantile(spread, (static_cast<double>(i) + 0.5) / static_cast<double>(shares)));
  return out;
}

class Spread {
 public:
  Spread(const MeanSquares& squares, double subjects, double raters)
      : raters_(raters), subject_degrees_(subjects - 1), subject_sum_(squares.subjects * (subjects - 1)) {
    const double residual_degrees = (subjects - 1) * (raters - 1);
    const std::vector<double> of_raters = chi_squared_at_shares(raters - 1, kRaterShares);
    for (const double residual : chi_squared_at_shares(residual_degrees, kResidualShares)) {
      const double error = squares.residual * residual_degrees / residual;
      for (const double rater : of_raters) {
        const double between = std::max(0.0, (squares.raters * (raters - 1) / rater - error) / subjects);
        variances_.push_back({error, between + error});
      }
    }
  }

  // The share of the spread in which the correlation is at most this one.
  [[nodiscard]] double below(double correlation) const {
    double sum = 0;
    for (const auto& [error, others] : variances_) {
      const double bound = error + raters_ * correlation / (1 - correlation) * others;
      if (bound > 0) sum += boost::math::gamma_q(subject_degrees_ / 2, subject_sum_ / bound / 2);
    }
    return sum / static_cast<double>(variances_.size());
  }

 private:
  struct Variances {
    double error = 0;
    double others = 0;  // the raters' and the error's
  };
  double raters_;
  double subject_degrees_;
  double subject_sum_;
  std::vector<Variances> variances_;
};

}  // namespace

Interval agreement_limits(const MeanSquares& mean_squares, std::size_t subjects, std::size_t raters, double level) {
  const auto k = static_cast<double>(raters);
  const Spread spread(mean_squares, static_cast<double>(subjects), k);
  const double tail = (1 - level) / 2;
  // A correlation of k raters lies above -1 / (k - 1); just inside of where it ends.
  const double least = -1 / (k - 1) + 1e-9;
  const double most = 1 - 1e-9;
  return {find_root([&](double at) { return spread.below(at) - tail; }, least, most),
          find_root([&](double at) { return spread.below(at) - (1 - tail); }, least, most)};
}

double correlation_of_mean(double one, std::size_t raters) {
  const auto k = static_cast<double>(raters);
  return k * one / (1 + (k - 1) * one);
}

}  // namespace lanework::evidence
