#include "app/planning/worker.h"

#include <chrono>
#include <iterator>
#include <utility>
#include <vector>

namespace lanework::planning {
namespace {

// Says now and then that the job is still held, from a thread and a connection of its own, as long as it lives.
class Holding {
 public:
  Holding(const Worker::OpenDesk& open, store::Held held, const Clocks& clocks, std::int64_t hold_seconds)
      : open_(open), held_(std::move(held)), clocks_(clocks), hold_seconds_(hold_seconds), thread_([this] { run(); }) {}
  Holding(const Holding&) = delete;
  Holding& operator=(const Holding&) = delete;
  ~Holding() {
    {
      const std::lock_guard<std::mutex> guard(lock_);
      ending_ = true;
    }
    end_.notify_one();
    thread_.join();
  }

 private:
  const Worker::OpenDesk& open_;
  store::Held held_;
  const Clocks& clocks_;
  std::int64_t hold_seconds_;
  std::mutex lock_;
  std::condition_variable end_;
  bool ending_ = false;
  std::thread thread_;

  void run() {
    std::unique_ptr<Desk> desk;
    const auto pause = std::chrono::milliseconds(hold_seconds_ * 1000 / 3);
    while (true) {
      {
        std::unique_lock<std::mutex> guard(lock_);
        if (end_.wait_for(guard, pause, [this] { return ending_; })) return;
      }
      if (!desk) {
        auto opened = open_();
        if (!opened) continue;
        desk = std::make_unique<Desk>(std::move(opened).value());
      }
      const auto still = desk->queue->hold_on(held_, clocks_.seconds() + hold_seconds_);
      if (still && !still.value()) return;
    }
  }
};

Result<std::vector<ledger::Received>> all_entries(store::Store& store, const ledger::KindTable& kinds) {
  constexpr std::size_t kAtOnce = 10'000;
  std::vector<ledger::Received> all;
  for (std::int64_t after = 0;;) {
    auto some = store.entries_after(after, kAtOnce, kinds);
    if (!some) return some.faults();
    if (some.value().empty()) return all;
    after = some.value().back().receipt;
    all.insert(all.end(), std::make_move_iterator(some.value().begin()), std::make_move_iterator(some.value().end()));
  }
}

}  // namespace

Worker::Worker(OpenDesk open, WorkerSettings settings, const ledger::KindTable& kinds, Clocks clocks,
               std::function<void(const Told&)> tell)
    : open_(std::move(open)),
      settings_(std::move(settings)),
      kinds_(kinds),
      clocks_(std::move(clocks)),
      tell_(std::move(tell)) {}

// Read anew where anything was entered, or anybody erased, since the last time: many squads are planned one after the
// other from one reading.
Result<const Known*> Worker::everything_known() {
  const auto versions = desk_->directory->versions();
  if (!versions) return versions.faults();
  if (known_ && known_version_ == versions.value().lists) {
    const auto newer = desk_->store->entries_after(known_->state.latest_receipt, 1, kinds_);
    if (!newer) return newer.faults();
    if (newer.value().empty()) return &*known_;
  }
  auto entries = all_entries(*desk_->store, kinds_);
  if (!entries) return entries.faults();
  Known known;
  known.state = ledger::fold(std::move(entries).value(), kinds_);
  known.care = ledger::care_document(known.state, kinds_);
  known_ = std::move(known);
  known_version_ = versions.value().lists;
  return &*known_;
}

Result<bool> Worker::plan(const store::PlanningJob& job) {
  const auto began = std::chrono::steady_clock::now();
  const store::Held held{job.number, job.worker, job.takings};
  const Holding holding(open_, held, clocks_, settings_.hold_seconds);
  const auto known = everything_known();
  if (!known) return known.faults();
  const auto stands = desk_->queue->latest_plan(job.squad);
  if (!stands) return stands.faults();
  const auto planned = plan_squad(settings_.files, job.squad, *known.value(), clocks_.day_of(clocks_.seconds()),
                                  stands.value() ? stands.value()->text : std::string());
  const std::chrono::duration<double> took = std::chrono::steady_clock::now() - began;
  constexpr double kMillisecondsInSecond = 1000;
  Told told{"planned", job.number, job.squad, {}, static_cast<std::int64_t>(took.count() * kMillisecondsInSecond)};
  if (!planned) told.event = "failed";
  if (!planned) told.why = fault_row(planned.faults().front().code).key;
  const auto kept =
      planned ? desk_->queue->finish(held, clocks_.seconds(),
                                     {0, job.squad, 0, known.value()->state.latest_receipt, planned.value().text})
              : desk_->queue->fail(held, clocks_.seconds(), to_line(planned.faults().front()));
  if (!kept) return kept.faults();
  if (!kept.value()) told.event = "not-ours";  // it took too long to say so, and somebody else is at it
  tell_(told);
  return true;
}

Result<bool> Worker::work_once() {
  if (!desk_) {
    auto opened = open_();
    if (!opened) return opened.faults();
    desk_ = std::make_unique<Desk>(std::move(opened).value());
  }
  const auto job = desk_->queue->take(settings_.id, clocks_.seconds(), settings_.hold_seconds);
  if (!job) return job.faults();
  return job.value() ? plan(*job.value()) : Result<bool>(false);
}

void Worker::run(const std::function<bool()>& ending) {
  constexpr auto kPause = std::chrono::milliseconds(500);
  bool was_there = true;
  while (!ending()) {
    const auto worked = work_once();
    if (!worked) desk_.reset();
    if (!worked && was_there) tell_({"no-store", 0, {}, {}, 0});
    was_there = worked.ok();
    if (!worked || !worked.value()) std::this_thread::sleep_for(kPause);
  }
}

}  // namespace lanework::planning
