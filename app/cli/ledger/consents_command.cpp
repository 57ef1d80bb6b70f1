#include "app/cli/ledger/consents_command.h"

#include <CLI/CLI.hpp>
#include <array>
#include <cstdio>
#include <memory>

#include "app/cli/command.h"
#include "app/cli/ledger/ledger_folder.h"
#include "app/cli/serve/rooms_of_ledger.h"
#include "core/ledger/consent.h"

namespace lanework::cli {
namespace {

std::string line_of(const store::ListedPlayer& player) {
  std::string squads;
  for (const std::string& squad : player.squads) squads += (squads.empty() ? "" : ", ") + squad;
  return "  " + player.id + "  " + player.name + (squads.empty() ? "" : " (" + squads + ")") + "\n";
}

// Of each purpose how many gave it, and who still has to be asked: those who said no are not asked again by a list.
Result<std::string> consents_text(serve::Room& room, const ledger::KindTable& kinds) {
  const auto lists = room.directory->lists();
  if (!lists) return lists.faults();
  std::vector<ledger::State> states;
  for (const store::ListedPlayer& player : lists.value().players) {
    const auto about = room.store->entries_about(player.id, kinds);
    if (!about) return about.faults();
    states.push_back(ledger::consents_among(about.value(), kinds));
  }
  std::string out;
  for (const std::string& purpose : ledger::purposes(kinds)) {
    std::array<int, 3> counts{};
    std::string never_asked;
    for (std::size_t i = 0; i < states.size(); ++i) {
      const store::ListedPlayer& player = lists.value().players[i];
      const ledger::Consent consent = ledger::consent_of(states[i], player.id, purpose);
      ++counts.at(static_cast<std::size_t>(consent));
      if (consent == ledger::Consent::kNeverAsked) never_asked += line_of(player);
    }
    out += purpose + ": " + std::to_string(counts[1]) + " given, " + std::to_string(counts[2]) + " withheld, " +
           std::to_string(counts[0]) + " never asked\n" + never_asked;
  }
  return out;
}

int show(const LedgerFlags& flags) {
  const auto open = open_ledger(flags);
  if (!open) return report(open.faults());
  auto room = rooms_of(flags)();
  if (!room) return report(room.faults());
  const auto text = consents_text(room.value(), open.value().kinds);
  if (!text) return report(text.faults());
  std::fputs(text.value().c_str(), stdout);
  return kDone;
}

}  // namespace

void add_consents_command(CLI::App& ledger, int& exit_status) {
  CLI::App* command =
      ledger.add_subcommand("consents", "of each purpose who gave consent, and the players nobody was asked about");
  const auto flags = std::make_shared<LedgerFlags>();
  add_ledger_flags(*command, *flags);
  command->callback([flags, &exit_status] { exit_status = show(*flags); });
}

}  // namespace lanework::cli
