// What the log likelihood of counts holds that does not change with the coefficients.
#pragma once

#include <vector>

#include "core/evidence/mixed/frame.h"

namespace lanework::evidence {

struct FrameConstants {
  std::vector<double> squad_events;
  std::vector<double> events_by_column;
  double log_likelihood = 0;  // of Poisson counts, its part that no parameter moves
};
FrameConstants constants_of(const Frame& frame);

}  // namespace lanework::evidence
