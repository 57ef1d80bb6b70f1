#include "core/clock/pace.h"

#include <algorithm>
#include <cmath>

#include "core/base/elementary.h"
#include "core/clock/constants.h"

namespace lanework::clock {

PaceBelief pace_prior(int age) {
  constexpr int kLastOfYoungest = 10;
  return {age <= kLastOfYoungest ? elementary_log(kPaceYoungest) : 0.0, kPacePriorSpread};
}

std::optional<double> observed_log_pace(Seconds recorded, const std::vector<SessionLine>& lines) {
  Milliseconds doing(0);
  Milliseconds beside(0);
  for (const SessionLine& line : lines) {
    doing += line.time.doing;
    beside += line.change + line.time.telling;
  }
  if (doing.count <= 0) return std::nullopt;
  const Milliseconds left = to_milliseconds(recorded) - beside;
  const double ratio = static_cast<double>(left.count) / static_cast<double>(doing.count);
  return elementary_log(std::clamp(ratio, 0.4, 2.5));
}

PaceBelief learn_pace(PaceBelief belief, double observed_log_pace) {
  const double before = belief.log_spread * belief.log_spread + kPaceDrift * kPaceDrift;
  const double night = kPaceNight * kPaceNight;
  const double most = kPaceClip * std::sqrt(before + night);
  const double gain = before / (before + night);
  const double surprise = std::clamp(observed_log_pace - belief.log_mean, -most, most);
  return {belief.log_mean + gain * surprise, std::sqrt((1 - gain) * before)};
}

int pace_thousandths(const PaceBelief& belief) {
  const double pace = 1000 * elementary_exp(belief.log_mean);
  return static_cast<int>(std::clamp(std::floor(pace + 0.5), 700.0, 1500.0));
}

}  // namespace lanework::clock
