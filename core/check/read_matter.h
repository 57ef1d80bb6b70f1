// The checker's own reader: the parts of a 'plan' request (docs/formats/door.md) to values.
#pragma once

#include "core/base/document.h"
#include "core/base/result.h"
#include "core/check/matter.h"

namespace lanework::check {

// Faults: a part that is not there, a value of a wrong type, a name that refers to nothing, nobody there. Keys
// that the check does not need are passed over.
Result<Matter> read_matter(const Node& request);

// The parts, each in a file of its own. Faults are collected.
void read_drills(TableReader& catalogue, Matter& matter);
void read_tables(TableReader& catalogue, Matter& matter);
void read_routine(TableReader& request, Matter& matter, Faults& faults);
Strip read_strip(TableReader& table);
void read_evening(TableReader& request, Matter& matter, Faults& faults);

}  // namespace lanework::check
