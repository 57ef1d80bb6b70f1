#include "core/evidence/leave_one_out.h"

#include <boost/math/distributions/students_t.hpp>
#include <cmath>

namespace lanework::evidence {

LeftOut limits_by_leaving_out(double figure, std::span<const double> without, double level) {
  double squares = 0;
  for (const double one : without) squares += (one - figure) * (one - figure);
  const auto count = static_cast<double>(without.size());
  LeftOut out;
  out.error = std::sqrt((count - 1) / count * squares);
  out.degrees = static_cast<int>(without.size()) - 1;
  const double reach = boost::math::quantile(boost::math::students_t(out.degrees), (1 + level) / 2) * out.error;
  out.limits = {figure - reach, figure + reach};
  return out;
}

}  // namespace lanework::evidence
