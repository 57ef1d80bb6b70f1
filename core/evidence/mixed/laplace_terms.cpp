#include "core/evidence/mixed/laplace_terms.h"

#include <cmath>

namespace lanework::evidence {
namespace {

using Eigen::ArrayXd;
using Numbers = Eigen::Ref<const ArrayXd>;

// A step of Newton's this short leaves an error of its square.
constexpr double kNear = 1e-8;

}  // namespace

// The density is log-concave: Newton's steps, held short where the exponential would run away.
ArrayXd squad_modes(const Numbers& events, const Numbers& expected, double variance) {
  ArrayXd z = ArrayXd::Zero(events.size());
  for (int step = 0; step < 200; ++step) {
    const ArrayXd by_variance = variance * expected * z.exp();
    const ArrayXd move = ((variance * events - by_variance - z) / (by_variance + 1)).max(-1).min(1);
    z += move;
    if (z.size() == 0 || move.abs().maxCoeff() <= kNear) break;
  }
  return z;
}

// Names: m the mean with the effect at its mode z, v the variance, u = v m, w = 1 + u; by the rule of the implicit
// function z moves by -u / w with the logarithm of the expected events and by 2 z / w with that of the deviation.
SquadTerms laplace_terms(const Numbers& events, const Numbers& expected, double log_deviation) {
  const double v = std::exp(2 * log_deviation);
  SquadTerms out;
  out.mode = squad_modes(events, expected, v);
  const ArrayXd& z = out.mode;
  const ArrayXd m = expected * z.exp();
  const ArrayXd u = v * m;
  const ArrayXd w = 1 + u;
  const ArrayXd inverse = 1 / w;
  const ArrayXd share = u * inverse;
  const ArrayXd drawn = z * inverse;
  const ArrayXd s = 1 + drawn;
  const ArrayXd squared = z * z / v;
  out.variance = v * inverse;
  out.log_likelihood = events * z - m - squared / 2 - w.log() / 2;
  out.by_expected = -m - share * inverse / 2;
  out.by_expected_twice = -m * inverse - share * (1 - u) * inverse.cube() / 2;
  out.by_deviation = squared - share * s;
  out.by_both = -2 * m * drawn - share * (1 - u) * s * inverse.square();
  out.by_deviation_twice =
      2 * squared * (2 * inverse - 1) - 2 * share * inverse * s.square() - 2 * share * drawn * inverse * (1 - u * s);
  return out;
}

}  // namespace lanework::evidence
