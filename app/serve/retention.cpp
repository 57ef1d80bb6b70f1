#include "app/serve/retention.h"

#include <chrono>

namespace lanework::serve {

namespace {

Date days_before(const Now& now, int days) { return Date{now.day.days_since_epoch - days}; }

// Of the books themselves. Whoever left is erased first, so that their entries go with the others'.
std::optional<Faults> let_go(store::Past& past, const Now& now, const Keeping& keeping, const store::ErasureNote& note,
                             Forgotten& out) {
  constexpr std::int64_t kSecondsOfDay = 86'400;
  const auto people = past.erase_who_left(days_before(now, keeping.who_left_days), now.stamp, note);
  if (!people) return people.faults();
  const auto evenings = past.let_go_of_evenings(days_before(now, keeping.evenings_days), now.stamp);
  if (!evenings) return evenings.faults();
  const auto of_erased = past.let_go_of_erased(now.stamp);
  if (!of_erased) return of_erased.faults();
  const auto reads = past.let_go_of_reads(now.seconds - keeping.read_notes_days * kSecondsOfDay, now.stamp);
  if (!reads) return reads.faults();
  out.people = people.value();
  out.entries = evenings.value() + of_erased.value();
  out.read_notes = reads.value();
  return out.people + out.entries + out.read_notes > 0 ? past.wipe() : std::nullopt;
}

}  // namespace

Result<Forgotten> forget_what_is_past(Room& room, const Now& now, const Keeping& keeping,
                                      const store::ErasureNote& note) {
  const auto of_signing_in = room.gate->forget_before(
      now.seconds - kSessionsKeptSeconds, now.seconds - kSessionsKeptSeconds, now.seconds - kLinksKeptSeconds);
  if (!of_signing_in) return of_signing_in.faults();
  const auto kept_aside = room.store->forget_kept_aside(days_before(now, kKeptAsideDays));
  if (!kept_aside) return kept_aside.faults();
  const auto plans = room.queue->forget_before(now.seconds - kPlansKeptSeconds);
  if (!plans) return plans.faults();
  Forgotten out{of_signing_in.value(), kept_aside.value(), plans.value()};
  const auto past = room.past();
  if (!past) return past.faults();
  if (auto faults = let_go(*past.value(), now, keeping, note, out)) return *faults;
  return out;
}

namespace {

// A day is kept for so many days after it, and goes with the next.
Ahead ahead(const char* what, int days, const store::OldestDay& oldest) {
  const auto day = parse_iso_date(oldest.day);
  if (!day) return {what, days, {}, 0};
  return {what, days, Date{day->days_since_epoch + days + 1}, oldest.count};
}

// A moment to the second.
Ahead ahead(const char* what, int days, const store::OldestMoment& oldest) {
  if (oldest.count == 0) return {what, days, {}, 0};
  return {what, days, Date{day_of(oldest.first).days_since_epoch + days}, oldest.count};
}

}  // namespace

std::vector<Ahead> what_goes_next(const store::Ages& ages, const Keeping& keeping) {
  constexpr std::int64_t kSecondsOfDay = 86'400;
  return {ahead("evenings", keeping.evenings_days, ages.evenings),
          ahead("people-who-left", keeping.who_left_days, ages.who_left),
          ahead("kept-aside", kKeptAsideDays, ages.kept_aside),
          ahead("plans", static_cast<int>(kPlansKeptSeconds / kSecondsOfDay), ages.plans),
          ahead("book-of-reads", keeping.read_notes_days, ages.read_notes)};
}

Caretaker::Caretaker(House& house, const Keeping& keeping)
    : house_(house), keeping_(keeping), thread_([this] { run(); }) {}

Caretaker::~Caretaker() {
  {
    const std::lock_guard<std::mutex> guard(lock_);
    ending_ = true;
  }
  end_.notify_one();
  thread_.join();
}

void Caretaker::run() {
  for (bool ending = false; !ending;) {
    const std::int64_t now = house_.clock();
    auto room = house_.rooms->take();
    const bool done = room && forget_what_is_past(**room.value(), now_at(now), keeping_, house_.note_erasure).ok();
    house_.log->add({now, done ? "forgotten" : "not-forgotten", {}, {}, 0, -1, {}, {}, {}});
    std::unique_lock<std::mutex> guard(lock_);
    ending = end_.wait_for(guard, std::chrono::hours(1), [this] { return ending_; });
  }
}

}  // namespace lanework::serve
