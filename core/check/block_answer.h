// A block answer (docs/formats/block.md) to the values it states. Nothing is judged here.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/base/document.h"
#include "core/base/result.h"
#include "core/check/judge.h"

namespace lanework::check {

struct StatedItem {
  NamedItem named;
  std::optional<std::int64_t> steps;
  std::optional<bool> done;  // of a session that is over
};

struct StatedSession {
  std::int64_t week = 0;  // from 1, like all weeks and spells that are stated
  Date date;
  int start_minutes = 0;
  std::int64_t minutes = 0;
  std::string strip;
  std::vector<int> lanes;
  std::int64_t turnout = 0;
  std::optional<std::int64_t> days_to_match;
  bool match_day = false;
  std::optional<std::int64_t> budget_steps;
  std::optional<std::int64_t> planned_steps;
  std::vector<StatedItem> items;
  std::string happened;  // of one that is over, like the next two
  std::string did_it;
  std::optional<std::int64_t> minutes_had;
};

struct StatedSpell {
  std::int64_t first_week = 0;
  std::int64_t weeks = 0;
  std::vector<std::string> drills;
  std::vector<std::string> comes_in;
  std::vector<std::string> leaves;
};

struct StatedLoad {
  std::int64_t used_thousandths = 0;
  std::int64_t ceiling = 0;
};

struct StatedFamily {
  std::string family;
  std::int64_t credits = 0;
  std::int64_t target = 0;
  std::int64_t work_seconds = 0;
};

struct StatedWeek {
  std::int64_t week = 0;
  std::int64_t spell = 0;
  std::vector<StatedFamily> families;
  std::optional<StatedLoad> contacts;
  std::optional<StatedLoad> eccentric;
  std::optional<StatedLoad> hard_running;  // metres
};

struct StatedMissed {
  Date date;
  int start_minutes = 0;
  std::string why;
};

struct StatedSessionChange {
  Date date;
  int start_minutes = 0;
  std::int64_t changes = 0;
};

struct StatedRolling {
  Date today;
  std::vector<StatedSessionChange> sessions;
};

struct StatedBlock {
  std::string squad;
  std::string name;
  std::string routine;
  bool feasible = true;
  std::int64_t value = 0;
  std::int64_t bound = 0;
  std::int64_t gap_hundredths = 0;  // of a percent
  std::vector<StatedSpell> spells;
  std::vector<StatedSession> sessions;
  std::vector<StatedWeek> weeks;
  std::vector<StatedMissed> missed;
  std::vector<std::string> shortfalls;
  std::optional<StatedRolling> rolling;  // of a block that has begun
};

struct StatedAnswer {
  std::string club;
  Date monday;
  std::int64_t weeks = 0;
  std::vector<StatedBlock> squads;

  [[nodiscard]] const StatedBlock* find(const std::string& squad) const;
};

// Faults: what is missing or of a wrong type. Keys that the check does not need are passed over.
Result<StatedAnswer> read_block_answer(const Document& answer);

}  // namespace lanework::check
