#include "app/serve/retention.h"

#include <chrono>

namespace lanework::serve {

Result<Forgotten> forget_what_is_past(Room& room, const Now& now) {
  const auto of_signing_in = room.gate->forget_before(
      now.seconds - kSessionsKeptSeconds, now.seconds - kSessionsKeptSeconds, now.seconds - kLinksKeptSeconds);
  if (!of_signing_in) return of_signing_in.faults();
  const auto kept_aside = room.store->forget_kept_aside(Date{now.day.days_since_epoch - kKeptAsideDays});
  if (!kept_aside) return kept_aside.faults();
  const auto plans = room.queue->forget_before(now.seconds - kPlansKeptSeconds);
  if (!plans) return plans.faults();
  return Forgotten{of_signing_in.value(), kept_aside.value(), plans.value()};
}

Caretaker::Caretaker(House& house) : house_(house), thread_([this] { run(); }) {}

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
    const bool done = room && forget_what_is_past(**room.value(), now_at(now)).ok();
    house_.log->add({now, done ? "forgotten" : "not-forgotten", {}, {}, 0, -1, {}, {}, {}});
    std::unique_lock<std::mutex> guard(lock_);
    ending = end_.wait_for(guard, std::chrono::hours(1), [this] { return ending_; });
  }
}

}  // namespace lanework::serve
