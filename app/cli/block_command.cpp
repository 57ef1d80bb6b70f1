#include <CLI/CLI.hpp>
#include <algorithm>
#include <cstdio>
#include <memory>
#include <string>
#include <vector>

#include "app/cli/block_check_command.h"
#include "app/cli/block_report.h"
#include "app/cli/block_why_text.h"
#include "app/cli/command.h"
#include "app/cli/evening_flags.h"
#include "app/cli/ledger/ledger_state.h"
#include "app/cli/plan_blocks.h"
#include "app/cli/rolling_flags.h"
#include "app/cli/share_out.h"
#include "app/planning/standing_block.h"
#include "app/read/club_folder.h"
#include "app/read/files.h"
#include "core/club/consistency.h"
#include "core/loop/sessions_so_far.h"

namespace lanework::cli {
namespace {

struct BlockFlags {
  std::string club;
  std::string catalogue;
  std::vector<std::string> squads;
  unsigned threads = 0;
  int work = 1;
  bool json = false;
  bool why = false;
  std::string standing;
  RollingFlags rolling;
  LedgerFlags ledger;
};

Faults unknown_squads(const BlockFlags& flags, const club::Club& club) {
  Faults faults;
  for (const std::string& id : flags.squads) {
    if (club.find(id) != nullptr) continue;
    faults.push_back({FaultCode::kUnknownName,
                      {"", 0, 0, "--squad"},
                      quote(id),
                      "the id of a squad of the club: the name of its file in squads/, without .toml",
                      {}});
  }
  return faults;
}

Result<std::vector<door::SquadWishes>> wishes_of_all(const BlockFlags& flags, const club::Club& club,
                                                     const club::Allocation& allocation) {
  std::vector<door::SquadWishes> out;
  Faults faults;
  for (std::size_t i = 0; i < club.squads.size(); ++i) {
    const club::ClubSquad& squad = club.squads[i];
    const bool asked =
        flags.squads.empty() || std::find(flags.squads.begin(), flags.squads.end(), squad.id) != flags.squads.end();
    if (!asked) continue;
    auto wishes = door::wishes_of(club, squad, allocation.calendars[i]);
    if (wishes) {
      out.push_back(std::move(wishes).value());
    } else {
      faults.insert(faults.end(), wishes.faults().begin(), wishes.faults().end());
    }
  }
  if (!faults.empty()) return faults;
  return out;
}

// Each squad's block planned on from what happened, where a plan stands. known: of a ledger; may be null.
Result<std::vector<door::SquadWishes>> rolled_on(const BlockFlags& flags, const club::Club& club,
                                                 const club::Allocation& allocation, const planning::Known* known,
                                                 std::vector<door::SquadWishes> wishes) {
  const auto text = read::read_file(flags.standing, {"", 0, 0, "--standing"});
  if (!text) return text.faults();
  const auto answer = read::read_block_answer(flags.standing, text.value());
  if (!answer) return answer.faults();
  auto so_far = read_so_far(flags.rolling, club, allocation);
  if (!so_far) return so_far.faults();
  if (known != nullptr) {
    auto entered = loop::sessions_so_far(known->state, club, allocation, so_far.value().today,
                                         planning::planned_in(answer.value(), club));
    so_far.value().rows = std::move(entered.rows);
    for (const std::string& sentence : entered.passed_over) std::fprintf(stderr, "%s\n", sentence.c_str());
  }
  so_far.value().standing_file = flags.standing;
  std::vector<door::SquadWishes> out;
  Faults faults;
  for (door::SquadWishes& squad : wishes) {
    auto standing = planning::standing_block(answer.value(), flags.standing, club, *squad.squad);
    auto rolled = standing ? door::roll_on(std::move(squad), std::move(standing).value(), so_far.value())
                           : Result<door::SquadWishes>(standing.faults());
    if (rolled) {
      out.push_back(std::move(rolled).value());
      continue;
    }
    for (const Fault& fault : rolled.faults()) {
      const auto same = [&](const Fault& other) { return to_line(other) == to_line(fault); };
      if (std::none_of(faults.begin(), faults.end(), same)) faults.push_back(fault);
    }
  }
  if (!faults.empty()) return faults;
  return out;
}

int plan(const BlockFlags& flags) {
  const auto shipped = catalogue_folder(flags.catalogue);
  if (!shipped) return report(shipped.faults());
  std::optional<planning::Known> known;
  if (!flags.ledger.folder.empty()) {
    LedgerFlags ledger = flags.ledger;
    ledger.catalogue = flags.catalogue;
    auto read = read_known(ledger);
    if (!read) return report(read.faults());
    known = std::move(read).value();
  }
  const read::ClubFolder folder = known ? read::read_club_folder(flags.club, shipped.value(), known->care)
                                        : read::read_club_folder(flags.club, shipped.value());
  if (!folder.faults.empty()) return report(folder.faults);
  if (const Faults faults = unknown_squads(flags, folder.club); !faults.empty()) return report(faults);
  const club::Settings& settings = folder.club.settings;
  const club::Allocation allocation = club::allocate(folder.club, settings.block_from, settings.block_weeks);
  auto wishes = wishes_of_all(flags, folder.club, allocation);
  if (!wishes) return report(wishes.faults());
  if (!flags.standing.empty()) {
    wishes = rolled_on(flags, folder.club, allocation, known ? &*known : nullptr, std::move(wishes).value());
    if (!wishes) return report(wishes.faults());
  }
  const std::size_t count = wishes.value().size();
  const SquadsDone tell = [&](std::size_t done) { std::fprintf(stderr, "squad %zu of %zu planned\n", done, count); };
  const block::Work work = block::times({}, flags.work);
  const std::vector<door::SquadBlock> blocks =
      plan_blocks(std::move(wishes).value(), work, flags.threads == 0 ? all_cores() : flags.threads, tell);
  std::string text = flags.json ? to_json(door::block_answer_node(folder.club, blocks), 2) + "\n" : blocks_text(blocks);
  if (flags.why && !flags.json) text += "\n" + block_why_text(blocks);
  std::fputs(text.c_str(), stdout);
  const bool all = std::all_of(blocks.begin(), blocks.end(), [](const auto& block) { return block.answer.feasible; });
  return all ? kDone : kAnswerIsNo;
}

}  // namespace

void add_block_command(CLI::App& app, int& exit_status) {
  CLI::App* command = app.add_subcommand("block", "the training block of every squad, or of some, with a proven gap");
  const auto flags = std::make_shared<BlockFlags>();
  CLI::Option* club = command->add_option("--club", flags->club, "the club's folder, with club.toml and squads/");
  command->add_option("--squad", flags->squads,
                      "only this squad (may be given more than once); one alone is told session by session");
  command->add_option("--catalogue", flags->catalogue, "folder of the catalogue, if not the shipped one");
  command->add_option("--threads", flags->threads, "threads; the blocks are the same with any number")
      ->check(CLI::Range(1, 256));
  command->add_option("--work", flags->work, "so many times the usual work, for smaller gaps")
      ->check(CLI::Range(1, 100));
  command->add_flag("--why", flags->why, "where every number comes from");
  command->add_flag("--json", flags->json, "the answer as JSON (schema/block-answer.schema.json)");
  command->add_option(
      "--standing", flags->standing,
      "plan on from this answer of 'lanework block --json', with as few changes as what happened asks for");
  add_rolling_flags(*command, flags->rolling);
  add_ledger_source(*command, flags->ledger);
  add_block_check(*command, exit_status);
  command->callback([command, club, flags, &exit_status] {
    if (!command->get_subcommands().empty()) return;
    if (club->empty()) throw CLI::RequiredError("--club");
    if (flags->standing.empty() && flags->rolling.given())
      throw CLI::RequiredError("--standing, the plan that --sessions and --today go on from,");
    if (!flags->ledger.folder.empty() && !flags->rolling.sessions.empty())
      throw CLI::ExcludesError("--ledger", "--sessions");
    exit_status = plan(*flags);
  });
}

}  // namespace lanework::cli
