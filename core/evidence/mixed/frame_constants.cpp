#include "core/evidence/mixed/frame_constants.h"

#include <cmath>
#include <cstddef>

namespace lanework::evidence {
namespace {

// Logarithms of factorials; small counts, which are nearly all, are looked up.
class LogFactorials {
 public:
  double of(double count) {
    if (count >= static_cast<double>(kKept)) return std::lgamma(count + 1);
    const auto at = static_cast<std::size_t>(count);
    while (known_.size() <= at) known_.push_back(std::lgamma(static_cast<double>(known_.size()) + 1));
    return known_[at];
  }

 private:
  static constexpr std::size_t kKept = 256;
  std::vector<double> known_;
};

}  // namespace

FrameConstants constants_of(const Frame& frame) {
  FrameConstants out;
  out.events_by_column.assign(frame.columns(), 0);
  LogFactorials factorials;
  std::size_t row = 0;
  for (const std::size_t end : frame.squad_ends) {
    double events = 0;
    for (; row < end; ++row) {
      const double own = frame.events[row];
      if (own == 0) continue;
      events += own;
      out.log_likelihood += own * frame.log_hours[row] - factorials.of(own);
      const double* x = frame.design.data() + row * frame.columns();
      for (std::size_t c = 0; c < frame.columns(); ++c) out.events_by_column[c] += own * x[c];
    }
    out.squad_events.push_back(events);
  }
  return out;
}

}  // namespace lanework::evidence
