// How a term moves the rate along its values, against one of them: the curve and its band.
#pragma once

#include <span>
#include <vector>

#include "core/evidence/mixed/count_model.h"

namespace lanework::evidence {

struct CurvePoint {
  double value = 0;
  double times = 1;  // the rate at the reference value
  Interval limits;   // of each point by itself; on the log scale, by the coefficients' covariance
};

// term: a number or a curve of the frame that the model was fitted to.
std::vector<CurvePoint> term_curve(const CountModel& model, const FrameTerm& term, std::span<const double> values,
                                   double reference);

}  // namespace lanework::evidence
