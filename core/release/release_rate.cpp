#include "core/release/release_rate.h"

#include <cmath>

namespace lanework::release {

Done done_by_all(const Release& release) {
  Done out;
  for (const auto& [squad, done] : release.whole.done) add(out, done);
  return out;
}

std::int64_t shown_hours(const Done& done) {
  constexpr double kMinutes = 60;
  return std::llround(static_cast<double>(done.player_minutes) / kMinutes);
}

bool gives_rate(const Count& count, const Done& done) {
  constexpr std::int64_t kFive = 5;
  constexpr std::int64_t kFour = 4;
  return !is_small(count) && done.player_minutes > 0 && kFive * done.confirmed >= kFour * (done.held + done.cut_short);
}

std::optional<evidence::Exposed> shown_rate(const Release& release) {
  const Done done = done_by_all(release);
  if (release.silent || !gives_rate(release.whole.all, done) || shown_hours(done) == 0) return {};
  return evidence::Exposed{release.whole.all.injuries, static_cast<double>(shown_hours(done))};
}

}  // namespace lanework::release
