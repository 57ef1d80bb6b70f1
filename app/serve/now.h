// One look at the clock: every part of a request goes by the same.
#pragma once

#include <cstdint>
#include <functional>
#include <string>

#include "core/base/date.h"

namespace lanework::serve {

struct Now {
  std::int64_t seconds = 0;  // since 1970, UTC
  Date day;                  // the club's, by the server's zone
  std::string stamp;         // '2026-11-26T18:05:00+01:00', the same
};

using Clock = std::function<std::int64_t()>;  // seconds since 1970

Now now_at(std::int64_t seconds);
Date day_of(std::int64_t seconds);
std::int64_t seconds_of_clock();  // the machine's

// '2026-11-26T18:05:00+01:00' as seconds since 1970. REQUIRES: ledger::is_time_with_offset.
std::int64_t seconds_of_stamp(const std::string& stamp);

}  // namespace lanework::serve
