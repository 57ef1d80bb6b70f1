#include "core/plan/constants.h"

namespace lanework::plan {

std::vector<clock::ConstantRow> constant_rows() {
  return {
#define LANEWORK_PLAN_CONSTANT(name, value, unit, source, why) {#name, #value, unit, source, why},
#include "core/plan/constants.def"
#undef LANEWORK_PLAN_CONSTANT
  };
}

}  // namespace lanework::plan
