// Where a fit starts.
#pragma once

#include <vector>

#include "core/evidence/mixed/frame.h"

namespace lanework::evidence {

// Every row the same rate: carried by the first column that is 1 in every row; without one all are 0.
std::vector<double> first_coefficients(const Frame& frame);

}  // namespace lanework::evidence
