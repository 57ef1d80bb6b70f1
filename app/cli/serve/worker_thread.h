// A planning worker over a ledger's flags: on a thread of its own beside the server, or the whole of a program.
#pragma once

#include <atomic>
#include <memory>
#include <string>
#include <thread>
#include <vector>

#include "app/cli/ledger/ledger_folder.h"
#include "app/planning/worker.h"

namespace lanework::cli {

// Where a worker finds the club's folder.
void add_plan_from(CLI::App& command, std::string& folder, bool required);

// One line of JSON on standard error for whatever it tells.
planning::Worker make_worker(const LedgerFlags& ledger, planning::WorkerSettings settings,
                             const ledger::KindTable& kinds);

// The machine's own asking, in nobody's name. Of those, how many.
Result<std::size_t> ask_for_plans(const LedgerFlags& ledger, const std::vector<std::string>& squads);

// 'w-' and 16 hexadecimal digits, at random.
std::string new_worker_id();

// Works until it is destroyed; what is under way is brought to its end first.
class WorkerThread {
 public:
  WorkerThread(const LedgerFlags& ledger, planning::PlanningFiles files, const ledger::KindTable& kinds);
  WorkerThread(const WorkerThread&) = delete;
  WorkerThread& operator=(const WorkerThread&) = delete;
  ~WorkerThread();

 private:
  planning::Worker worker_;
  std::atomic<bool> ending_{false};
  std::thread thread_;
};

}  // namespace lanework::cli
