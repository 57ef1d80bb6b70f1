// Takes planning jobs from the queue, one after the other, and keeps what comes of them. As many as there are may work
// on one queue, in one process or on many machines; one that ends in the middle of a job leaves it to another.
// docs/model/queue.md.
#pragma once

#include <atomic>
#include <condition_variable>
#include <cstdint>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <thread>

#include "app/planning/squad_plan.h"
#include "app/store/directory.h"
#include "app/store/queue.h"
#include "app/store/store.h"
#include "core/base/date.h"

namespace lanework::planning {

inline constexpr std::int64_t kHoldSeconds = 60;  // a worker that is silent for so long is taken for gone

// What a worker reads and writes; each with connections of its own.
struct Desk {
  std::unique_ptr<store::Store> store;
  std::unique_ptr<store::Queue> queue;
  std::unique_ptr<store::Directory> directory;
};

struct Clocks {
  std::function<std::int64_t()> seconds;     // since 1970
  std::function<Date(std::int64_t)> day_of;  // the club's
};

// What it tells whoever runs it: an event and whom it is about, never a person or a plan's contents.
struct Told {
  std::string event;  // 'planned', 'failed', 'not-ours', 'no-store'
  std::int64_t job = 0;
  std::string squad;
  std::string why;  // the fault's key; its line, which may quote a file, is the lead's alone
  std::int64_t milliseconds = 0;
};

struct WorkerSettings {
  std::string id;  // 'w-' and 16 hexadecimal digits
  PlanningFiles files;
  std::int64_t hold_seconds = kHoldSeconds;
};

class Worker {
 public:
  using OpenDesk = std::function<Result<Desk>()>;
  Worker(OpenDesk open, WorkerSettings settings, const ledger::KindTable& kinds, Clocks clocks,
         std::function<void(const Told&)> tell);

  // One job, if there is one: true where there was. Faults: the store cannot be reached; what was taken is somebody
  // else's after a while.
  Result<bool> work_once();
  // Until 'ending' says so; what is under way is brought to its end first. Looks for work every half second.
  void run(const std::function<bool()>& ending);

 private:
  OpenDesk open_;
  WorkerSettings settings_;
  const ledger::KindTable& kinds_;
  Clocks clocks_;
  std::function<void(const Told&)> tell_;
  std::unique_ptr<Desk> desk_;
  std::optional<Known> known_;
  std::int64_t known_version_ = -1;

  Result<const Known*> everything_known();
  Result<bool> plan(const store::PlanningJob& job);
};

}  // namespace lanework::planning
