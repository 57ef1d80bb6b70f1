#include "core/evidence/funnel.h"

#include <algorithm>
#include <boost/math/special_functions/gamma.hpp>

namespace lanework::evidence {

double funnel_limit(double expected, double share) {
  // The least count that is not passed with this chance; P(X <= count) = Q(count + 1, mean).
  double count = 0;
  while (boost::math::gamma_q(count + 1, expected) < share) ++count;
  const double over = boost::math::gamma_q(count + 1, expected) - share;
  const double own = boost::math::gamma_p_derivative(count + 1, expected);
  return std::max(0.0, (count - over / own) / expected);
}

}  // namespace lanework::evidence
