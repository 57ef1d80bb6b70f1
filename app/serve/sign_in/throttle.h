// How long somebody must wait after so many failures in a row. Guessing becomes slow; nobody is locked out for long,
// and an address that fails does not hold up other addresses. docs/security.md has the figures and why.
#pragma once

#include <cstdint>

namespace lanework::serve {

struct ThrottleRule {
  std::int64_t free = 5;                // failures that cost nothing
  std::int64_t first_wait_seconds = 1;  // after that, doubled by each further failure
  std::int64_t most_wait_seconds = 900;
  std::int64_t forget_after_seconds = 86'400;  // without a failure
};

inline constexpr ThrottleRule kByAccountFromAnAddress{5, 1, 900, 86'400};
// From everywhere: slows a guess from many addresses, and never makes the owner wait for more than half a minute.
inline constexpr ThrottleRule kByAccount{100, 1, 30, 86'400};
inline constexpr ThrottleRule kByAddress{20, 2, 900, 3'600};
inline constexpr ThrottleRule kBySecondFactor{5, 60, 900, 86'400};
inline constexpr ThrottleRule kByPairing{10, 6, 600, 3'600};

// When the next try may be made; at most now + most_wait.
std::int64_t next_try(const ThrottleRule& rule, std::int64_t failures, std::int64_t last_failure, std::int64_t now);

}  // namespace lanework::serve
