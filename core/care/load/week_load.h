// Session load and what a week of it looks like: Foster C, Florhaug JA, Franklin J, et al. 2001, J Strength Cond Res
// 15(1):109-15. Load is effort (0 to 10) x minutes, in units of its own. A description, and nothing more.
#pragma once

#include <array>
#include <optional>

namespace lanework::care::load {

inline constexpr int kDaysAWeek = 7;

inline double session_load(double effort, int minutes) { return effort * minutes; }

// The source does not settle which deviation: over six (sample) or seven (population). Ours is the sample's.
enum class Spread { kSample, kPopulation };

struct WeekLoad {
  double total = 0;
  double daily_mean = 0;
  double deviation = 0;            // of the seven days
  std::optional<double> monotony;  // mean over deviation; not applicable where every day is alike
  std::optional<double> strain;    // total x monotony
};

// Days without a session are 0.
WeekLoad week_load(const std::array<double, kDaysAWeek>& days, Spread spread = Spread::kSample);

}  // namespace lanework::care::load
