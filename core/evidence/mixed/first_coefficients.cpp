#include "core/evidence/mixed/first_coefficients.h"

#include <cmath>

namespace lanework::evidence {

std::vector<double> first_coefficients(const Frame& frame) {
  double events = 0;
  double hours = 0;
  for (std::size_t row = 0; row < frame.rows(); ++row) {
    events += frame.events[row];
    hours += std::exp(frame.log_hours[row]);
  }
  std::vector<double> out(frame.columns(), 0);
  for (std::size_t c = 0; c < frame.columns(); ++c) {
    bool constant = true;
    for (std::size_t row = 0; row < frame.rows() && constant; ++row)
      constant = frame.design[row * frame.columns() + c] == 1;
    if (!constant) continue;
    out[c] = std::log(events / hours);
    break;
  }
  return out;
}

}  // namespace lanework::evidence
