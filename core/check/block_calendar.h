// Calendar arithmetic of docs/formats/club.md and the spells of docs/model/block.md, written again.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/check/club_matter.h"

namespace lanework::check {

// A session that the squad wishes for, before lanes are shared.
struct Wish {
  Date date;
  int start_minutes = 0;
  std::int64_t seconds = 0;
  std::string strip;  // id
  int lanes = 0;      // wished
  std::optional<int> days_to_match;
  bool match_day = false;
  bool elsewhere = false;  // takes no lanes
  int week = 0;            // of the block, from 0
};

// A slot that falls out. Its reason, as an answer words it, says one of 'words'.
struct FallenOut {
  Date date;
  int start_minutes = 0;
  std::vector<std::string> words;
};

struct SquadCalendar {
  std::vector<Wish> wishes;  // by date and start, like the other list
  std::vector<FallenOut> fallen_out;
};

SquadCalendar calendar_of(const ClubMatter& club, const SquadWeek& squad);

// The spell of each week, from 0: threes where that comes out even, else fours; five weeks are three and two.
std::vector<int> spells_of(int weeks);

// 0 Monday.
int weekday_of(Date date);

// '2026-11-24 18:00'
std::string words_of(Date date, int start_minutes);

}  // namespace lanework::check
