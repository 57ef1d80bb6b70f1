#include "core/clock/constants.h"

namespace lanework::clock {

std::vector<ConstantRow> constant_rows() {
  return {
#define LANEWORK_CLOCK_WHOLE(name, value, unit, source, why) {#name, #value, unit, source, why},
#define LANEWORK_CLOCK_REAL(name, value, unit, source, why) {#name, #value, unit, source, why},
#include "core/clock/constants.def"
#undef LANEWORK_CLOCK_WHOLE
#undef LANEWORK_CLOCK_REAL
  };
}

}  // namespace lanework::clock
