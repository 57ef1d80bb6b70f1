// Readers of the four tables beside the drills. Inside this folder only.
#pragma once

#include <vector>

#include "core/base/document.h"
#include "core/catalogue/catalogue.h"

namespace lanework::catalogue {

// Faults are collected; what comes back is complete only when none was added.
std::vector<FamilyRow> read_families(const Document& document, Faults& faults);
// The table 'emphasis' of a family's row, the row's weight known.
Emphasis read_emphasis(TableReader& table, int weight);
std::vector<Gait> read_gaits(const Document& document, Faults& faults);
Limits read_limits(const Document& document, Faults& faults);
std::vector<Source> read_source_list(const Document& document, Faults& faults);

}  // namespace lanework::catalogue
