// The session problem in the LP text format, for readers that do not take MPS.
#pragma once

#include <string>

#include "core/plan/export_rows.h"

namespace lanework::plan {

std::string lp_text(const LevelProgram& program);

}  // namespace lanework::plan
