// The constants of the plan by name, and as rows for whoever asks where a number comes from.
#pragma once

#include <vector>

#include "core/clock/constants.h"

namespace lanework::plan {

#define LANEWORK_PLAN_CONSTANT(name, value, unit, source, why) inline constexpr int name = value;
#include "core/plan/constants.def"
#undef LANEWORK_PLAN_CONSTANT

std::vector<clock::ConstantRow> constant_rows();

}  // namespace lanework::plan
