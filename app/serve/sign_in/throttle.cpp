#include "app/serve/sign_in/throttle.h"

#include <algorithm>

namespace lanework::serve {

std::int64_t next_try(const ThrottleRule& rule, std::int64_t failures, std::int64_t last_failure, std::int64_t now) {
  // A clock that was set back would else hold somebody up for as long.
  if (failures <= rule.free || now - last_failure >= rule.forget_after_seconds || last_failure > now) return now;
  const std::int64_t doublings = std::min<std::int64_t>(failures - rule.free - 1, 20);
  const std::int64_t wait = std::min(rule.most_wait_seconds, rule.first_wait_seconds << doublings);
  return std::max(now, last_failure + wait);
}

}  // namespace lanework::serve
