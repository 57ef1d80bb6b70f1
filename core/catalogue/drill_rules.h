// The rules between the fields of one drill. Inside this folder only.
#pragma once

#include "core/base/document.h"
#include "core/catalogue/drill.h"

namespace lanework::catalogue {

// table is the drill's root, for the places of faults. REQUIRES: every field of the drill was read without
// a fault, so that one mistake of the user stays one fault.
void check_drill(const Drill& drill, TableReader& table);

}  // namespace lanework::catalogue
