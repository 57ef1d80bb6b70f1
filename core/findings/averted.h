// Injuries averted, by a fitted model, against the same hours without any of a column: by parametric simulation,
// drawing the coefficients from their normal approximation.
#pragma once

#include <cstddef>

#include "core/evidence/mixed/count_model.h"
#include "core/findings/warm_up_model.h"

namespace lanework::findings {

Averted averted(const evidence::Frame& frame, const evidence::CountModel& model, std::size_t column, double level);

}  // namespace lanework::findings
