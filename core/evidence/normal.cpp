#include "core/evidence/normal.h"

#include <boost/math/distributions/normal.hpp>
#include <cmath>

namespace lanework::evidence {

double normal_quantile(double share) { return boost::math::quantile(boost::math::normal(), share); }

double two_sided_p(double z) {
  return 2 * boost::math::cdf(boost::math::complement(boost::math::normal(), std::abs(z)));
}

double reach_of(double level) { return normal_quantile((1 + level) / 2); }

}  // namespace lanework::evidence
