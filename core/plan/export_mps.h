// The session problem as free MPS. Minimisation is MPS's own default and no OBJSENSE stands in the text,
// because some readers ignore it.
#pragma once

#include "core/plan/export_rows.h"

namespace lanework::plan {

// One level's program; optimum holds the values of the levels before it. 'level' counts from 0; level 0
// needs no optimum, so that an infeasible problem can be written too.
std::string mps_text(const ExportTable& table, int level, const Objective& optimum);

LevelTexts export_levels_mps(const Problem& problem, const Objective& optimum);

}  // namespace lanework::plan
