// What is kept for a time only, and goes by itself: sessions, links, failures of signing in, what was kept aside,
// plans, entries, people who left, and the book of reads. docs/security.md says how long and why.
#pragma once

#include <condition_variable>
#include <mutex>
#include <optional>
#include <thread>
#include <vector>

#include "app/serve/house.h"
#include "app/serve/keeping.h"

namespace lanework::serve {

inline constexpr std::int64_t kSessionsKeptSeconds = 86'400;  // longer than any session lasts
inline constexpr std::int64_t kLinksKeptSeconds = 86'400;
inline constexpr int kKeptAsideDays = 30;
inline constexpr std::int64_t kPlansKeptSeconds = 2LL * 365 * 86'400;  // two seasons: what was planned for a child

inline constexpr int kFewestEveningsDays = 365;  // a season is replanned and reported from them

struct Forgotten {
  std::int64_t of_signing_in = 0;  // sessions, links, failures
  std::int64_t kept_aside = 0;
  std::int64_t plans = 0;    // and the jobs that made them
  std::int64_t people = 0;   // who left, erased
  std::int64_t entries = 0;  // emptied: of evenings, and of people who were erased
  std::int64_t read_notes = 0;
};

// Done again it does nothing more. note: of people who are erased by it.
Result<Forgotten> forget_what_is_past(Room& room, const Now& now, const Keeping& keeping,
                                      const store::ErasureNote& note);

// Of one class: how long it is kept, and the day on which the next of it goes.
struct Ahead {
  const char* what = "";
  int keeps_days = 0;
  std::optional<Date> next_day;  // empty: nothing is there that goes
  std::int64_t would_go = 0;     // on that day
};

std::vector<Ahead> what_goes_next(const store::Ages& ages, const Keeping& keeping);

// Does it at once and every hour, until it is destroyed; a store that cannot be reached is tried an hour later.
class Caretaker {
 public:
  Caretaker(House& house, const Keeping& keeping);
  Caretaker(const Caretaker&) = delete;
  Caretaker& operator=(const Caretaker&) = delete;
  ~Caretaker();

 private:
  House& house_;
  Keeping keeping_;
  std::mutex lock_;
  std::condition_variable end_;
  bool ending_ = false;
  std::thread thread_;

  void run();
};

}  // namespace lanework::serve
