// The constants of the clock by name, and as rows for whoever asks where a number comes from.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace lanework::clock {

#define LANEWORK_CLOCK_WHOLE(name, value, unit, source, why) inline constexpr std::int64_t name = value;
#define LANEWORK_CLOCK_REAL(name, value, unit, source, why) inline constexpr double name = value;
#include "core/clock/constants.def"
#undef LANEWORK_CLOCK_WHOLE
#undef LANEWORK_CLOCK_REAL

struct ConstantRow {
  std::string name;    // 'kStartUp'
  std::string value;   // '1000'
  std::string unit;    // 'ms'
  std::string source;  // key of sources.toml
  std::string why;     // what it is for
};
std::vector<ConstantRow> constant_rows();

}  // namespace lanework::clock
