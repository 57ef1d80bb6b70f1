#include "core/care/environment/weather.h"

namespace lanework::care::environment {

bool MeasuredAge::stale() const { return !minutes || *minutes > stale_after; }

MeasuredAge age_at(const std::optional<Moment>& measured_at, Moment now, int stale_after) {
  if (!measured_at) return {{}, stale_after};
  return {static_cast<int>(minutes_between(*measured_at, now)), stale_after};
}

std::string age_words(const MeasuredAge& age) {
  if (!age.minutes) return "nobody says when it was measured";
  if (*age.minutes == 0) return "measured just now";
  if (*age.minutes == 1) return "measured a minute ago";
  if (*age.minutes <= 3 * kStaleAfterMinutes) return "measured " + std::to_string(*age.minutes) + " minutes ago";
  return "measured " + std::to_string(*age.minutes / 60) + " hours ago";
}

}  // namespace lanework::care::environment
