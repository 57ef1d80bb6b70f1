// The session problem in the LP text format, for readers that do not take MPS.
#pragma once

#include "core/plan/export_rows.h"

namespace lanework::plan {

// As mps_text.
std::string lp_text(const ExportTable& table, int level, const Objective& optimum);

LevelTexts export_levels_lp(const Problem& problem, const Objective& optimum);

}  // namespace lanework::plan
