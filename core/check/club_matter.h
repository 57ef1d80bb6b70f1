// What the checker knows of a club: its own values, read by its own reader from the documents as they stand.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/base/result.h"
#include "core/check/block_documents.h"
#include "core/check/matter.h"

namespace lanework::check {

struct Kit {
  int cones = 0;
  int balls = 0;
  int mats = 0;
};

struct Holiday {
  std::string name;
  Date from;
  Date to;  // the last day of it
};

struct GroundStrip {
  std::string id;
  Strip strip;  // with all its lanes
};

// Pins and bans for squads of these ages.
struct Locks {
  int age_from = 8;
  int age_to = 19;
  std::vector<Pin> pins;
  std::vector<std::string> bans;
};

struct WeeklySlot {
  int weekday = 0;  // 0 Monday
  int start_minutes = 0;
  std::int64_t seconds = 0;
  std::string strip;  // id
  int lanes = 0;
};

struct SquadMatch {
  Date date;
  std::optional<int> kick_off_minutes;
  std::int64_t warm_up_seconds = 0;  // only with a kick-off
  bool away = false;
};

struct RungFrom {
  std::string drill;
  std::string rung;
  Date from;  // the first week that begins on it or later
};

struct SquadWeek {
  std::string id;
  std::string name;
  std::string routine;  // id
  std::string strip;    // id of the strip of its own
  std::vector<WeeklySlot> slots;
  std::vector<SquadMatch> matches;
  std::vector<Date> away_days;
  std::optional<int> turnout;
  Kit kit;
  bool free_composition = false;  // the first set may have any drills
  Locks locks;
  std::vector<RungFrom> rungs;                // as the file has them
  const SquadDocuments* documents = nullptr;  // never null
};

struct ClubMatter {
  std::string name;
  Date season_from;
  Date season_to;  // the last day of it
  Date monday;     // of the block's first week
  int weeks = 0;
  std::vector<Holiday> holidays;
  std::vector<GroundStrip> strips;
  std::optional<Kit> kit;  // shared by all squads
  std::vector<Locks> locks;
  std::vector<std::string> served_first;
  std::vector<SquadWeek> squads;  // by id

  [[nodiscard]] const SquadWeek* find(const std::string& id) const;
  [[nodiscard]] const GroundStrip* find_strip(const std::string& id) const;
};

// Faults: what cannot be read, and names of strips that do not exist. The documents outlive the matter.
Result<ClubMatter> read_club_matter(const BlockDocuments& documents);

}  // namespace lanework::check
