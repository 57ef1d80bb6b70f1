#include "app/cli/club_plan.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <utility>

#include "app/cli/evening_flags.h"
#include "app/read/club_folder.h"
#include "app/read/files.h"
#include "core/club/consistency.h"

namespace lanework::cli {
namespace {

constexpr const char* kPlanAgain = "plan the block again: lanework block --club DIR --json";

// What an answer says of a club that is not so, or no longer.
class AnswerCheck {
 public:
  AnswerCheck(const ClubPlan& plan, std::string file) : plan_(plan), file_(std::move(file)) {}

  Faults run() {
    const club::Settings& settings = plan_.club.settings;
    const read::BlockAnswer& answer = *plan_.answer;
    if (answer.monday != settings.block_from || answer.weeks != settings.block_weeks) {
      add({file_, 0, 0, "monday"}, span(answer.monday, answer.weeks),
          span(settings.block_from, settings.block_weeks) + ", as club.toml says");
      return faults_;
    }
    for (const read::SquadBlock& block : answer.squads) {
      const club::ClubSquad* squad = plan_.club.find(block.squad);
      if (squad == nullptr) {
        add(block.place, quote(block.squad), "a squad of the club");
        continue;
      }
      check(block, *squad);
    }
    return faults_;
  }

 private:
  const ClubPlan& plan_;
  std::string file_;
  Faults faults_;

  static std::string span(Date monday, int weeks) { return std::to_string(weeks) + " weeks from " + to_iso(monday); }

  void add(const Place& place, std::string found, std::string expected) {
    faults_.push_back({FaultCode::kContradiction, place, std::move(found), std::move(expected), kPlanAgain});
  }

  void check(const read::SquadBlock& block, const club::ClubSquad& squad) {
    const auto at = static_cast<std::size_t>(&squad - plan_.club.squads.data());
    const std::vector<club::PlannedSlot>& slots = plan_.allocation.calendars[at].slots;
    for (const read::BlockSession& session : block.sessions) {
      const bool known = std::any_of(slots.begin(), slots.end(), [&](const club::PlannedSlot& slot) {
        return slot.date == session.date && slot.start == session.start;
      });
      if (!known) {
        add(session.place, block.squad + " on " + to_iso(session.date) + " at " + to_text(session.start),
            "a session of the squad's calendar");
        continue;
      }
      for (const read::BlockDrill& drill : session.drills) {
        if (planning::line_of(drill, plan_.club.catalogue_of(squad))) continue;
        add(drill.place,
            quote(drill.drill) + ", " + quote(drill.rung) + ", " + std::to_string(drill.sets) + " x " +
                std::to_string(drill.amount),
            "a drill, a rung and a dose of the catalogue");
      }
    }
    for (const club::PlannedSlot& slot : slots) {
      if (session_at(&block, slot.date, slot.start) != nullptr) continue;
      add(block.place, block.squad + " without its session on " + to_iso(slot.date) + " at " + to_text(slot.start),
          "all sessions of the squad's calendar");
    }
  }
};

Result<std::vector<std::size_t>> asked_of(const ClubPlanFlags& flags, const club::Club& club) {
  std::vector<std::size_t> out;
  Faults faults;
  for (const std::string& id : flags.squads) {
    if (club.find(id) == nullptr) {
      faults.push_back({FaultCode::kUnknownName,
                        {"", 0, 0, "--squad"},
                        quote(id),
                        "the id of a squad of the club: the name of its file in squads/, without .toml",
                        {}});
    }
  }
  for (std::size_t i = 0; i < club.squads.size(); ++i) {
    const auto& ids = flags.squads;
    if (ids.empty() || std::find(ids.begin(), ids.end(), club.squads[i].id) != ids.end()) out.push_back(i);
  }
  if (!faults.empty()) return faults;
  return out;
}

}  // namespace

void add_club_plan_flags(CLI::App& command, ClubPlanFlags& flags, bool block_required) {
  command.add_option("--club", flags.club, "the club's folder, with club.toml and squads/")->required();
  command.add_option("--squad", flags.squads, "only this squad; may stand more than once");
  auto* block = command.add_option("--block", flags.block, "the answer of 'lanework block --json', as a file");
  if (block_required) block->required();
  command.add_option("--catalogue", flags.catalogue, "folder of the catalogue, if not the shipped one");
}

const read::SquadBlock* ClubPlan::block_of(const club::ClubSquad& squad) const {
  return answer ? answer->find(squad.id) : nullptr;
}

Result<ClubPlan> load_club_plan(const ClubPlanFlags& flags) {
  const auto shipped = catalogue_folder(flags.catalogue);
  if (!shipped) return shipped.faults();
  read::ClubFolder folder = read::read_club_folder(flags.club, shipped.value());
  if (!folder.faults.empty()) return folder.faults;
  ClubPlan plan;
  plan.club = std::move(folder.club);
  const club::Settings& settings = plan.club.settings;
  plan.allocation = club::allocate(plan.club, settings.block_from, settings.block_weeks);
  const club::Consistency found = club::find_inconsistencies(plan.club, plan.allocation);
  if (!found.faults.empty()) return found.faults;
  auto asked = asked_of(flags, plan.club);
  if (!asked) return asked.faults();
  plan.asked = std::move(asked).value();
  if (flags.block.empty()) return plan;
  const auto text = read::read_file(flags.block, {"", 0, 0, "--block"});
  if (!text) return text.faults();
  auto answer = read::read_block_answer(flags.block, text.value());
  if (!answer) return answer.faults();
  plan.answer = std::move(answer).value();
  Faults faults = AnswerCheck(plan, flags.block).run();
  if (!faults.empty()) return faults;
  return plan;
}

const read::BlockSession* session_at(const read::SquadBlock* block, Date date, TimeOfDay start) {
  if (block == nullptr) return nullptr;
  const auto at = std::find_if(block->sessions.begin(), block->sessions.end(), [&](const read::BlockSession& session) {
    return session.date == date && session.start == start;
  });
  return at == block->sessions.end() ? nullptr : &*at;
}

std::string drill_in_words(const catalogue::RoutineLine& line, const catalogue::Catalogue& catalogue) {
  const catalogue::Drill& drill = catalogue.drills[static_cast<std::size_t>(line.drill)];
  return drill.name + ", " + drill.rungs[static_cast<std::size_t>(line.rung)].change + ": " +
         catalogue::dose_in_words(drill, drill.dose.steps[static_cast<std::size_t>(line.dose)]);
}

std::string drill_name(const std::string& id, const catalogue::Catalogue& catalogue) {
  const catalogue::Drill* drill = catalogue.find(id);
  return drill == nullptr ? id : drill->name;
}

std::string drill_names(const std::vector<std::string>& ids, const catalogue::Catalogue& catalogue) {
  std::string out;
  for (const std::string& id : ids) out += (out.empty() ? "" : "; ") + drill_name(id, catalogue);
  return out;
}

}  // namespace lanework::cli
