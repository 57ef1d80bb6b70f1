// The session problem as free MPS. Minimisation is MPS's own default and no OBJSENSE stands in the text,
// because some readers ignore it.
#pragma once

#include <string>

#include "core/plan/export_rows.h"

namespace lanework::plan {

std::string mps_text(const LevelProgram& program);

}  // namespace lanework::plan
