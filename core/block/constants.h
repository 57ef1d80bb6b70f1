// The constants of the block by name, and as rows for whoever asks where a number comes from.
#pragma once

#include <cstdint>
#include <vector>

#include "core/clock/constants.h"

namespace lanework::block {

using Points = std::int64_t;

#define LANEWORK_BLOCK_COUNT(name, value, unit, source, why) inline constexpr int name = value;
#define LANEWORK_BLOCK_POINTS(name, value, unit, source, why) inline constexpr Points name = value;
#include "core/block/constants.def"
#include "core/block/rolling_constants.def"
#undef LANEWORK_BLOCK_COUNT
#undef LANEWORK_BLOCK_POINTS

std::vector<clock::ConstantRow> constant_rows();
// Of a block that has begun.
std::vector<clock::ConstantRow> rolling_constant_rows();

}  // namespace lanework::block
