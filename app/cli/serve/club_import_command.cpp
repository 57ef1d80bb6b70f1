#include <CLI/CLI.hpp>
#include <cstdio>
#include <memory>

#include "app/cli/command.h"
#include "app/cli/evening_flags.h"
#include "app/cli/serve/rooms_of_ledger.h"
#include "app/planning/club_lists.h"
#include "app/read/club_folder.h"

namespace lanework::cli {
namespace {

struct ImportFlags {
  LedgerFlags ledger;
  std::string from;
  bool dry_run = false;
};

int import(const ImportFlags& flags) {
  const auto catalogue = catalogue_folder(flags.ledger.catalogue);
  if (!catalogue) return report(catalogue.faults());
  const read::ClubFolder folder = read::read_club_folder(flags.from, catalogue.value());
  if (!folder.faults.empty()) return report(folder.faults);
  const auto open = open_ledger(flags.ledger);
  if (!open) return report(open.faults());
  auto room = rooms_of(flags.ledger)();
  if (!room) return report(room.faults());
  const auto before = room.value().directory->lists();
  if (!before) return report(before.faults());
  const store::Lists after = planning::lists_of(folder.club);
  const std::string words = planning::changes_in_words(before.value(), after);
  std::fputs(words.empty() ? "Nothing has changed.\n" : words.c_str(), stdout);
  if (flags.dry_run) {
    std::fputs("A dry run: nothing was kept.\n", stdout);
    return kDone;
  }
  if (words.empty()) return kDone;
  const auto erased = room.value().directory->keep(after, stamp_now());
  if (!erased) return report(erased.faults());
  std::printf("Kept: %zu squads, %zu players.\n", after.squads.size(),
              after.players.size() - static_cast<std::size_t>(erased.value()));
  if (erased.value() > 0) {
    std::printf("Left out: %lld who were erased. Take them out of the folder too.\n",
                static_cast<long long>(erased.value()));
  }
  return kDone;
}

}  // namespace

void add_club_import_command(CLI::App& app, int& exit_status) {
  CLI::App* command =
      app.add_subcommand("import", "keep a club folder's squads and players beside the ledger, for the server");
  const auto flags = std::make_shared<ImportFlags>();
  add_ledger_flags(*command, flags->ledger);
  command->add_option("FOLDER", flags->from, "the club's folder (docs/formats/club.md)")->required();
  command->add_flag("--dry-run", flags->dry_run, "say what would change, and keep nothing");
  command->callback([flags, &exit_status] { exit_status = import(*flags); });
}

}  // namespace lanework::cli
