#include "app/cli/ledger/ledger_state.h"

#include <CLI/CLI.hpp>
#include <iterator>
#include <utility>
#include <vector>

#include "core/ledger/consent.h"
#include "core/ledger/gaps.h"

namespace lanework::cli {

void add_ledger_source(CLI::App& command, LedgerFlags& flags) {
  command.add_option("--ledger", flags.folder, "go by what was entered in this ledger (docs/formats/ledger.md)");
  command.add_option("--ledger-key", flags.key, "the key's file, if it is not ledger.key in that folder");
  auto* club = command.add_option("--ledger-club", flags.club, "whose ledger, in a PostgreSQL database");
  command.add_option("--postgres", flags.postgres, "where that database is; else the entries lie in the folder")
      ->needs(club);
}

Result<ledger::State> state_of(const OpenLedger& open) {
  constexpr std::size_t kAtOnce = 10'000;
  std::vector<ledger::Received> all;
  for (std::int64_t after = 0;;) {
    auto some = open.store->entries_after(after, kAtOnce, open.kinds);
    if (!some) return some.faults();
    if (some.value().empty()) break;
    after = some.value().back().receipt;
    all.insert(all.end(), std::make_move_iterator(some.value().begin()), std::make_move_iterator(some.value().end()));
  }
  const auto gone = open.store->gone();
  if (!gone) return gone.faults();
  ledger::State out = ledger::fold(std::move(all), open.kinds);
  out.gaps = ledger::gaps_without(std::move(out.gaps), gone.value().entries);
  close_records(out, open.kinds);
  return out;
}

Result<planning::Known> read_known(const LedgerFlags& flags) {
  const auto open = open_ledger(flags);
  if (!open) return open.faults();
  auto state = state_of(open.value());
  if (!state) return state.faults();
  Node care = ledger::care_document(state.value(), open.value().kinds);
  return planning::Known{std::move(state).value(), std::move(care)};
}

}  // namespace lanework::cli
