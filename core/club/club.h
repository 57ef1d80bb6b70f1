// One club as its folder says (docs/formats/club.md): settings, and every squad with everything a block needs.
// A Club made by read_club is sound as far as its files go: every id in it names something that exists. What only
// whole squads together can contradict is found by consistency.h and allocation.h.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/base/result.h"
#include "core/catalogue/catalogue.h"
#include "core/catalogue/routine.h"
#include "core/club/coaches.h"
#include "core/people/player.h"
#include "core/session/squad.h"
#include "core/session/strip.h"

namespace lanework::club {

inline constexpr int kFewestWeeks = 3;  // of a block
inline constexpr int kMostWeeks = 8;

struct Holiday {
  std::string name;
  Date from;
  Date to;  // the last day of it
  Place place;
};

// A strip and all the lanes it has; squads share it lane by lane.
struct ClubStrip {
  std::string id;  // 'north-end'
  session::Strip strip;
  Place place;
};

// Pins and bans of an age band; 8 to 19 is the whole club.
struct BandLocks {
  int age_from = 8;
  int age_to = 19;
  session::Locks locks;
  Place place;
};

// club.toml.
struct Settings {
  std::string name;
  Date season_from;
  Date season_to;                         // the last day of it
  Date block_from;                        // a Monday
  int block_weeks = 6;                    // kFewestWeeks..kMostWeeks
  std::vector<Holiday> holidays;          // by first day
  std::vector<ClubStrip> strips;          // by id
  std::optional<session::Kit> kit;        // shared by all squads; empty: every squad has its own
  std::vector<BandLocks> locks;           // in the order of the file
  std::vector<std::string> served_first;  // squad ids, before the others where wishes start together
  std::string region;                     // whose tables of weather hold; empty: their default
  Place block_place;
};

struct ClubSquad {
  std::string id;    // the file's name without its ending: 'u13-kestrels'
  std::string file;  // as faults name it
  session::Squad squad;
  std::vector<people::Player> players;  // of this squad, in roster order; also those who sit out
  people::Restrictions restrictions;    // of every file of the club, so that they follow a player; its own file's first
  std::size_t own_restrictions = 0;     // how many of them its own file has: what one evening of it sees
  std::size_t catalogue = 0;            // index into Club::catalogues
  catalogue::Routine routine;
  catalogue::Routine match_day_routine;
  std::size_t strip = 0;  // index into Settings::strips: where a week's slot names none
};

struct Club {
  Settings settings;
  std::vector<catalogue::Catalogue> catalogues;  // one a folder of own drills; the first is the shipped one alone
  std::vector<ClubSquad> squads;                 // by id
  std::optional<std::vector<Coach>> coaches;     // in the order of coaches.toml; empty: there is no such file
  std::vector<std::string> reported_of_nobody;   // players' ids in the entries that no roster has

  [[nodiscard]] const catalogue::Catalogue& catalogue_of(const ClubSquad& squad) const {
    return catalogues[squad.catalogue];
  }
  [[nodiscard]] const ClubSquad* find(const std::string& id) const;
};

// Who warms up on a day: the stated expected_turnout, else all of the squad but those who sit out that day. Not
// clamped: a squad of one is 1.
int turnout_on(const ClubSquad& squad, Date day);

// The age ceilings go by on a day: as the squad file states, else the youngest player's; empty where nobody's is known.
std::optional<int> age_on(const ClubSquad& squad, Date day);

// Everything fixed for this squad on a day: its own locks, then those of its age band and of the whole club. A drill
// stands once in pins (the squad's own pin wins) and once in bans.
session::Locks locks_on(const Club& club, const ClubSquad& squad, Date day);

}  // namespace lanework::club
