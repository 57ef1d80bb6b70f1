// The answer of 'lanework block --json' (docs/formats/block.md) as values: what cards, calendars and summaries are made
// of. Keys that are not read here are let pass.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/date.h"
#include "core/base/result.h"

namespace lanework::read {

struct BlockDrill {
  std::string drill;  // id
  std::string rung;   // key
  int sets = 0;
  int amount = 0;
  int steps = 0;             // 0: not stated
  std::optional<bool> done;  // of a session that is over
  Place place;
};

struct BlockSession {
  int week = 0;  // from 1
  Date date;
  TimeOfDay start;
  int minutes = 0;
  std::string strip;  // id
  std::vector<int> lanes;
  int turnout = 0;
  std::optional<int> days_to_match;
  bool match_day = false;
  std::optional<int> budget_steps;
  std::string happened;  // 'held', 'cut short', 'missed' or 'no word'; empty: it is to come
  std::vector<BlockDrill> drills;
  Place place;
};

struct BlockSpell {
  int first_week = 0;
  int weeks = 0;
  std::vector<std::string> drills;    // ids
  std::vector<std::string> comes_in;  // drill ids
  std::vector<std::string> leaves;
};

struct BlockFamily {
  int week = 0;
  std::string family;  // as families.toml has it
  int credits = 0;     // quarters of the family's session
  int target = 0;
};

// What minutes more or fewer would be worth, worked out anew.
struct BlockMinutePrice {
  int minutes = 0;  // below 0: fewer
  int before = 0;   // the block's worth
  int after = 0;
  std::string sentence;
};

struct SquadBlock {
  std::string squad;  // id
  std::string name;
  std::string routine;
  bool feasible = true;
  int gap_hundredths = 0;  // of a percent, rounded up
  std::vector<BlockSpell> spells;
  std::vector<BlockSession> sessions;
  std::vector<BlockFamily> families;    // by week
  std::vector<std::string> shortfalls;  // sentences
  std::vector<BlockMinutePrice> minute_prices;
  Place place;
};

struct BlockAnswer {
  std::string club;
  Date monday;
  int weeks = 0;
  std::vector<SquadBlock> squads;

  [[nodiscard]] const SquadBlock* find(const std::string& squad) const;
};

// file: as the user named it. All faults of the text are collected.
Result<BlockAnswer> read_block_answer(const std::string& file, std::string_view text);

}  // namespace lanework::read
