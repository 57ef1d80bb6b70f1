// The sheet of sessions: player, date, minutes, effort, who entered it. docs/formats/load.md.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/base/result.h"
#include "core/people/sheet_columns.h"

namespace lanework::care::load {

struct SessionEffort {
  std::string player;
  Date date;
  std::string session;  // which of the day: 'morning'; may be empty
  int minutes = 0;
  double effort = 0;  // 0 to 10
  std::optional<int> age;
  int line = 0;
};

// A row that is no feed: somebody else's guess of how hard it was for the player.
struct KeptOut {
  std::string player;
  int line = 0;
  std::string entered_by;  // as written; empty where nobody is named
};

struct Sessions {
  std::vector<SessionEffort> sessions;  // by player, then date, then line
  std::vector<KeptOut> kept_out;        // by line
};

const people::KnownColumns& session_columns();

// Only what the player or the lead entered is taken; every other row, a coach's or nobody's, is kept out and told, and
// its numbers are not read. Faults, all collected: cells that cannot be read, one session of a player twice.
Result<Sessions> read_sessions(const people::Sheet& sheet, const people::TextForms& forms, Date day);

}  // namespace lanework::care::load
