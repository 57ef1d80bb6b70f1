// A planned block as the plan that stands, as its answer would tell it.
#pragma once

#include "core/block/build_problem.h"
#include "core/block/rolling.h"

namespace lanework::block {

Standing standing_of(const Outline& outline, const Built& built, const Plan& plan);

}  // namespace lanework::block
