#include <CLI/CLI.hpp>
#include <atomic>
#include <csignal>
#include <cstdio>
#include <memory>

#include "app/cli/command.h"
#include "app/cli/evening_flags.h"
#include "app/cli/serve/worker_thread.h"
#include "app/read/club_folder.h"

namespace lanework::cli {
namespace {

struct WorkerFlags {
  LedgerFlags ledger;
  std::string plan_from;
  std::int64_t hold_seconds = planning::kHoldSeconds;
  bool once = false;
  bool ask = false;
};

std::atomic<bool> told_to_end{false};

void end(int /*signal*/) { told_to_end = true; }

int run(const WorkerFlags& flags) {
  const auto catalogue = catalogue_folder(flags.ledger.catalogue);
  if (!catalogue) return report(catalogue.faults());
  const auto open = open_ledger(flags.ledger);
  if (!open) return report(open.faults());
  // What is wrong in the folder now is told now, not with the first job.
  const read::ClubFolder folder = read::read_club_folder(flags.plan_from, catalogue.value());
  if (!folder.faults.empty()) return report(folder.faults);
  if (flags.ask) {
    std::vector<std::string> squads;
    for (const club::ClubSquad& squad : folder.club.squads) squads.push_back(squad.id);
    const auto asked = ask_for_plans(flags.ledger, squads);
    if (!asked) return report(asked.faults());
  }
  const std::string id = new_worker_id();
  planning::Worker worker =
      make_worker(flags.ledger, {id, {flags.plan_from, catalogue.value()}, flags.hold_seconds}, open.value().kinds);
  std::signal(SIGTERM, end);
  std::signal(SIGINT, end);
  if (!flags.once) {
    std::printf("Worker %s is waiting for what there is to plan.\n", id.c_str());
    std::fflush(stdout);
    worker.run([] { return told_to_end.load(); });
    std::fputs("What was under way is planned. Good night.\n", stdout);
    return kDone;
  }
  for (std::size_t count = 0; !told_to_end; ++count) {
    const auto worked = worker.work_once();
    if (!worked) return report(worked.faults());
    if (worked.value()) continue;
    std::printf("%zu planned; nothing more to do.\n", count);
    break;
  }
  return kDone;
}

}  // namespace

void add_worker_command(CLI::App& app, int& exit_status) {
  CLI::App* command =
      app.add_subcommand("worker", "plans what the server was asked to plan; start as many as you like");
  const auto flags = std::make_shared<WorkerFlags>();
  add_ledger_flags(*command, flags->ledger);
  add_plan_from(*command, flags->plan_from, true);
  command->add_option("--hold", flags->hold_seconds, "seconds of silence after which another worker takes a job over")
      ->check(CLI::Range(3, 3600));
  command->add_flag("--once", flags->once, "end when nothing is left to do");
  command->add_flag("--ask", flags->ask, "first ask for the block of every squad of the folder");
  command->callback([flags, &exit_status] { exit_status = run(*flags); });
}

}  // namespace lanework::cli
