// What is kept for a time only, and goes by itself: sessions, links, failures of signing in, and what was kept aside.
// docs/security.md says how long and why.
#pragma once

#include <condition_variable>
#include <mutex>
#include <thread>

#include "app/serve/house.h"

namespace lanework::serve {

inline constexpr std::int64_t kSessionsKeptSeconds = 86'400;  // longer than any session lasts
inline constexpr std::int64_t kLinksKeptSeconds = 86'400;
inline constexpr int kKeptAsideDays = 30;
inline constexpr std::int64_t kPlansKeptSeconds = 2LL * 365 * 86'400;  // two seasons: what was planned for a child

struct Forgotten {
  std::int64_t of_signing_in = 0;  // sessions, links, failures
  std::int64_t kept_aside = 0;
  std::int64_t plans = 0;  // and the jobs that made them
};

// Done again it does nothing more.
Result<Forgotten> forget_what_is_past(Room& room, const Now& now);

// Does it at once and every hour, until it is destroyed; a store that cannot be reached is tried an hour later.
class Caretaker {
 public:
  explicit Caretaker(House& house);
  Caretaker(const Caretaker&) = delete;
  Caretaker& operator=(const Caretaker&) = delete;
  ~Caretaker();

 private:
  House& house_;
  std::mutex lock_;
  std::condition_variable end_;
  bool ending_ = false;
  std::thread thread_;

  void run();
};

}  // namespace lanework::serve
