// How often one account or one device may ask: a burst, then so many a minute. Of this process only; what guards a
// password is in the store (sign_in/throttle.h).
#pragma once

#include <cstdint>
#include <map>
#include <mutex>
#include <optional>
#include <string>

#include "app/serve/http/message.h"

namespace lanework::serve {

struct PaceRule {
  std::int64_t burst = 240;
  std::int64_t a_minute = 240;
};

class Pace {
 public:
  explicit Pace(PaceRule rule = {}) : rule_(rule) {}
  // Empty: go on. Else the answer, 429, with the seconds to wait.
  std::optional<Response> too_fast(const std::string& who, std::int64_t now_seconds);

 private:
  struct Allowance {
    std::int64_t sixtieths = 0;  // of a request
    std::int64_t since = 0;
  };
  PaceRule rule_;
  std::mutex lock_;
  std::map<std::string, Allowance> all_;
};

}  // namespace lanework::serve
