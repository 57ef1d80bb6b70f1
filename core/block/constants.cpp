#include "core/block/constants.h"

namespace lanework::block {

#define LANEWORK_BLOCK_COUNT(name, value, unit, source, why) {#name, #value, unit, source, why},
#define LANEWORK_BLOCK_POINTS(name, value, unit, source, why) {#name, #value, unit, source, why},

std::vector<clock::ConstantRow> constant_rows() {
  return {
#include "core/block/constants.def"
  };
}

std::vector<clock::ConstantRow> rolling_constant_rows() {
  return {
#include "core/block/rolling_constants.def"
  };
}

#undef LANEWORK_BLOCK_COUNT
#undef LANEWORK_BLOCK_POINTS

}  // namespace lanework::block
