// One spell of a block for itself, with weeks that are alike put together: the same prices serve them all.
#pragma once

#include <vector>

#include "core/block/problem.h"

namespace lanework::block {

struct OpenPart {
  Problem problem;         // the sessions of the spell only; one week of each kind
  std::vector<int> times;  // by week of 'problem': how many weeks alike it stands for
};

// Close pairs of sessions that are not of one week are let go: a bound of the part stays one of the spell.
OpenPart open_part(const Problem& problem, int spell);

// Of each week the first that is like it: the same spell, sessions, ceilings and fixed credits.
std::vector<std::size_t> first_alike(const Problem& problem);

}  // namespace lanework::block
