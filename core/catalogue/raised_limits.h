// A club's own limits.toml held against the one it takes the place of: a club may lower what a warm-up asks of the
// young, never raise it (docs/decisions/0007-a-club-may-only-lower-youth-ceilings.md).
#pragma once

#include "core/base/document.h"
#include "core/base/result.h"

namespace lanework::catalogue {

// One fault for every value of 'own' that allows more than 'shipped', at its place in 'own'. Each age is compared,
// whatever the bands. None where one of the two is broken in itself: read_catalogue tells that.
Faults raised_limits(const Document& shipped, const Document& own);

}  // namespace lanework::catalogue
