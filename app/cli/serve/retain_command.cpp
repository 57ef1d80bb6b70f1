#include <CLI/CLI.hpp>
#include <cstdio>
#include <memory>

#include "app/cli/command.h"
#include "app/cli/serve/keeping_flags.h"
#include "app/cli/serve/rooms_of_ledger.h"
#include "app/store/archive/erasure_list.h"

namespace lanework::cli {
namespace {

int retain(const LedgerFlags& flags, const serve::Keeping& keeping) {
  const auto open = open_ledger(flags);
  if (!open) return report(open.faults());
  auto room = rooms_of(flags)();
  if (!room) return report(room.faults());
  const auto note = [&](const std::string& tag, const std::string& when) {
    return store::archive::add_to_erasure_list(erased_file(flags), tag, when);
  };
  const auto gone = serve::forget_what_is_past(room.value(), serve::now_at(serve::seconds_of_clock()), keeping, note);
  if (!gone) return report(gone.faults());
  std::printf(
      "Past their time and gone: %lld of signing in, %lld kept aside, %lld of planning, %lld people who left, "
      "%lld entries, %lld notes of reading.\n",
      static_cast<long long>(gone.value().of_signing_in), static_cast<long long>(gone.value().kept_aside),
      static_cast<long long>(gone.value().plans), static_cast<long long>(gone.value().people),
      static_cast<long long>(gone.value().entries), static_cast<long long>(gone.value().read_notes));
  return kDone;
}

}  // namespace

void add_retain_command(CLI::App& app, int& exit_status) {
  CLI::App* command =
      app.add_subcommand("retain", "let go of what is kept for a time only; the server does it every hour");
  const auto flags = std::make_shared<LedgerFlags>();
  const auto keeping = std::make_shared<serve::Keeping>();
  add_ledger_flags(*command, *flags);
  command->add_option("--erased", flags->erased, "the list of the erased, if not erased.list in that folder");
  add_keeping(*command, *keeping);
  command->callback([flags, keeping, &exit_status] { exit_status = retain(*flags, *keeping); });
}

}  // namespace lanework::cli
