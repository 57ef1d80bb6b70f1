#include "core/evidence/shrunken_share.h"

#include <boost/math/special_functions/beta.hpp>

namespace lanework::evidence {

ShrunkenShare shrunken_share(std::int64_t count, std::int64_t of, const UsualShare& usual, double level) {
  const double ours = usual.weighs * usual.share + static_cast<double>(count);
  const double others = usual.weighs * (1 - usual.share) + static_cast<double>(of - count);
  const double tail = (1 - level) / 2;
  return {ours / (ours + others),
          {boost::math::ibeta_inv(ours, others, tail), boost::math::ibetac_inv(ours, others, tail)}};
}

}  // namespace lanework::evidence
