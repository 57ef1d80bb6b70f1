#include "app/cli/serve/worker_thread.h"

#include <CLI/CLI.hpp>
#include <cstdio>
#include <utility>

#include "app/cli/serve/rooms_of_ledger.h"
#include "app/serve/now.h"
#include "app/store/sealing.h"

namespace lanework::cli {
namespace {

void tell(const planning::Told& told) {
  Node line = Node::make_table();
  line.set("time", Node::make_text(serve::now_at(serve::seconds_of_clock()).stamp));
  line.set("event", Node::make_text(told.event));
  if (told.job > 0) line.set("job", Node::make_integer(told.job));
  if (!told.squad.empty()) line.set("squad", Node::make_text(told.squad));
  if (!told.why.empty()) line.set("why", Node::make_text(told.why));
  if (told.milliseconds > 0) line.set("milliseconds", Node::make_integer(told.milliseconds));
  std::fputs((to_json(line) + "\n").c_str(), stderr);
  std::fflush(stderr);
}

}  // namespace

void add_plan_from(CLI::App& command, std::string& folder, bool required) {
  command.add_option("--plan-from", folder, "the club's folder, which plans are made from (docs/formats/club.md)")
      ->required(required);
}

Result<std::size_t> ask_for_plans(const LedgerFlags& ledger, const std::vector<std::string>& squads) {
  auto room = rooms_of(ledger)();
  if (!room) return room.faults();
  for (const std::string& squad : squads) {
    const auto number = room.value().queue->ask(squad, {}, serve::seconds_of_clock());
    if (!number) return number.faults();
  }
  return squads.size();
}

std::string new_worker_id() { return store::made_id("w-"); }

planning::Worker make_worker(const LedgerFlags& ledger, planning::WorkerSettings settings,
                             const ledger::KindTable& kinds) {
  const serve::OpenRoom open = rooms_of(ledger);
  const auto desk = [open]() -> Result<planning::Desk> {
    auto room = open();
    if (!room) return room.faults();
    return planning::Desk{std::move(room.value().store), std::move(room.value().queue),
                          std::move(room.value().directory)};
  };
  return {desk, std::move(settings), kinds, {serve::seconds_of_clock, serve::day_of}, tell};
}

WorkerThread::WorkerThread(const LedgerFlags& ledger, planning::PlanningFiles files, const ledger::KindTable& kinds)
    : worker_(make_worker(ledger, {new_worker_id(), std::move(files), planning::kHoldSeconds}, kinds)),
      thread_([this] { worker_.run([this] { return ending_.load(); }); }) {}

WorkerThread::~WorkerThread() {
  ending_ = true;
  thread_.join();
}

}  // namespace lanework::cli
