#include <CLI/CLI.hpp>
#include <cstdio>
#include <memory>

#include "app/cli/command.h"
#include "app/cli/serve/rooms_of_ledger.h"
#include "app/serve/retention.h"

namespace lanework::cli {
namespace {

int retain(const LedgerFlags& flags) {
  const auto open = open_ledger(flags);
  if (!open) return report(open.faults());
  auto room = rooms_of(flags)();
  if (!room) return report(room.faults());
  const auto gone = serve::forget_what_is_past(room.value(), serve::now_at(serve::seconds_of_clock()));
  if (!gone) return report(gone.faults());
  std::printf("Past their time and gone: %lld of signing in, %lld kept aside, %lld of planning.\n",
              static_cast<long long>(gone.value().of_signing_in), static_cast<long long>(gone.value().kept_aside),
              static_cast<long long>(gone.value().plans));
  return kDone;
}

}  // namespace

void add_retain_command(CLI::App& app, int& exit_status) {
  CLI::App* command =
      app.add_subcommand("retain", "let go of what is kept for a time only; the server does it every hour");
  const auto flags = std::make_shared<LedgerFlags>();
  add_ledger_flags(*command, *flags);
  command->callback([flags, &exit_status] { exit_status = retain(*flags); });
}

}  // namespace lanework::cli
