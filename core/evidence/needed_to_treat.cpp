#include "core/evidence/needed_to_treat.h"

namespace lanework::evidence {
namespace {

std::optional<double> one_by(double fewer) {
  if (fewer == 0) return {};
  return 1 / fewer;
}

}  // namespace

NeededToTreat needed_to_treat(double fewer, const Interval& limits) {
  return {one_by(fewer), one_by(limits.high), one_by(limits.low), limits.low <= 0 && limits.high >= 0};
}

}  // namespace lanework::evidence
