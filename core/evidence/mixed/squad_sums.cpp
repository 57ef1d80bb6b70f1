#include "core/evidence/mixed/squad_sums.h"

#include <cmath>

namespace lanework::evidence {

FrameConstants constants_of(const Frame& frame) {
  FrameConstants out;
  out.events_by_column.assign(frame.columns(), 0);
  std::size_t row = 0;
  for (const std::size_t end : frame.squad_ends) {
    double events = 0;
    for (; row < end; ++row) {
      const double own = frame.events[row];
      events += own;
      out.log_likelihood += own * frame.log_hours[row] - std::lgamma(own + 1);
      const double* x = frame.design.data() + row * frame.columns();
      for (std::size_t c = 0; c < frame.columns(); ++c) out.events_by_column[c] += own * x[c];
    }
    out.squad_events.push_back(events);
  }
  return out;
}

void sum_squad(const Frame& frame, std::size_t squad, const std::vector<double>& coefficients, SquadSums& sums) {
  const std::size_t columns = frame.columns();
  sums.expected = 0;
  sums.design.assign(columns, 0);
  sums.squares.assign(columns * (columns + 1) / 2, 0);
  for (std::size_t row = squad == 0 ? 0 : frame.squad_ends[squad - 1]; row < frame.squad_ends[squad]; ++row) {
    const double* x = frame.design.data() + row * columns;
    double log_mean = frame.log_hours[row];
    for (std::size_t c = 0; c < columns; ++c) log_mean += x[c] * coefficients[c];
    const double mean = std::exp(log_mean);
    sums.expected += mean;
    double* squares = sums.squares.data();
    for (std::size_t c = 0; c < columns; ++c) {
      const double weighted = mean * x[c];
      sums.design[c] += weighted;
      for (std::size_t d = 0; d <= c; ++d) *squares++ += weighted * x[d];
    }
  }
}

}  // namespace lanework::evidence
