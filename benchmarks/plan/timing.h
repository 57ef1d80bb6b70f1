// Processor time of this thread, and what a list of times comes to. On a busy machine the clock on the wall
// would measure the neighbours.
#pragma once

#include <time.h>

#include <algorithm>
#include <cstdio>
#include <vector>

namespace lanework::bench {

inline double thread_seconds() {
  timespec now{};
  clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
  return static_cast<double>(now.tv_sec) + static_cast<double>(now.tv_nsec) * 1e-9;
}

// Median of 'runs' calls, seconds.
template <class Call>
double median_seconds(int runs, const Call& call) {
  std::vector<double> times;
  for (int run = 0; run < runs; ++run) {
    const double from = thread_seconds();
    call();
    times.push_back(thread_seconds() - from);
  }
  std::sort(times.begin(), times.end());
  return times[times.size() / 2];
}

// The value below which a share of the list lies. REQUIRES: not empty.
inline double quantile(std::vector<double> values, double share) {
  std::sort(values.begin(), values.end());
  const auto at = static_cast<std::size_t>(share * static_cast<double>(values.size()));
  return values[std::min(at, values.size() - 1)];
}

// 'name  median 1.20 ms  quartiles 0.90 .. 1.80  99 % 4.00  worst 5.10  (200 instances)'
inline void print_times(const char* name, const std::vector<double>& seconds) {
  const auto ms = [&](double share) { return 1e3 * quantile(seconds, share); };
  std::printf("%-46s median %9.3f ms  quartiles %.3f .. %.3f  99 %% %.3f  worst %.3f  (%zu instances)\n", name, ms(0.5),
              ms(0.25), ms(0.75), ms(0.99), ms(1), seconds.size());
}

inline void print_aim(const char* what, double seconds, double aim_ms) {
  std::printf("  %s %.3f ms, aim %.1f ms: %s\n", what, 1e3 * seconds, aim_ms,
              1e3 * seconds <= aim_ms ? "met" : "MISSED");
}

}  // namespace lanework::bench
