// What cards, exports and summaries of a whole club start from: the folder, who has which lanes when, and, where one is
// handed in, the answer of 'lanework block --json', held against both.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/planning/block_line.h"
#include "app/read/block_answer.h"
#include "core/catalogue/routine.h"
#include "core/club/allocation.h"
#include "core/club/club.h"
#include "core/club/icalendar.h"

namespace CLI {
class App;
}

namespace lanework::cli {

struct ClubPlanFlags {
  std::string club;
  std::string catalogue;
  std::string block;
  std::vector<std::string> squads;
};

// block_required: whether there is nothing to do without an answer.
void add_club_plan_flags(CLI::App& command, ClubPlanFlags& flags, bool block_required);

struct ClubPlan {
  club::Club club;
  club::Allocation allocation;
  std::optional<read::BlockAnswer> answer;
  std::vector<std::size_t> asked;  // indices into Club::squads

  // Null where the answer has nothing about it.
  [[nodiscard]] const read::SquadBlock* block_of(const club::ClubSquad& squad) const;
};

// Faults: of the folder, of its squads together, of the answer, and wherever the answer is of another club, block or
// calendar, or names a drill, rung or dose that the catalogue does not have.
Result<ClubPlan> load_club_plan(const ClubPlanFlags& flags);

// The planned session of a slot; null where there is none.
const read::BlockSession* session_at(const read::SquadBlock* block, Date date, TimeOfDay start);

// 'Side plank, knees down: 2 x 20 s a side'.
std::string drill_in_words(const catalogue::RoutineLine& line, const catalogue::Catalogue& catalogue);

// The name of a drill of the catalogue; its id where it has none.
std::string drill_name(const std::string& id, const catalogue::Catalogue& catalogue);

// 'Step and hold; Lunge, rotate and reach': names have commas of their own.
std::string drill_names(const std::vector<std::string>& ids, const catalogue::Catalogue& catalogue);

}  // namespace lanework::cli
