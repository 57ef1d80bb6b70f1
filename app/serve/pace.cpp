#include "app/serve/pace.h"

#include <algorithm>

#include "app/serve/answer.h"

namespace lanework::serve {

std::optional<Response> Pace::too_fast(const std::string& who, std::int64_t now_seconds) {
  constexpr std::int64_t kOne = 60;
  constexpr std::size_t kMany = 100'000;
  const std::lock_guard<std::mutex> guard(lock_);
  if (all_.size() > kMany) all_.clear();  // of accounts and devices there are never so many
  const auto [place, fresh] = all_.try_emplace(who, Allowance{rule_.burst * kOne, now_seconds});
  Allowance& allowance = place->second;
  const std::int64_t passed = std::max<std::int64_t>(0, now_seconds - allowance.since);
  allowance.sixtieths = std::min(rule_.burst * kOne, allowance.sixtieths + passed * rule_.a_minute);
  allowance.since = now_seconds;
  if (allowance.sixtieths >= kOne) {
    allowance.sixtieths -= kOne;
    return {};
  }
  const std::int64_t wait = (kOne - allowance.sixtieths + rule_.a_minute - 1) / rule_.a_minute;
  Response out = error_answer(429, "too-fast", "That is too often. Wait a little.");
  return out.with("Retry-After", std::to_string(std::max<std::int64_t>(1, wait)));
}

}  // namespace lanework::serve
