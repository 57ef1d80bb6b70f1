// The squad file: what the lead states about a squad and its evening. Grammar: docs/formats/squad.md.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/base/document.h"
#include "core/base/result.h"
#include "core/catalogue/catalogue.h"
#include "core/people/player.h"
#include "core/session/evening.h"
#include "core/session/weekly.h"

namespace lanework::session {

// The files a squad file names, as written there.
struct SquadFiles {
  std::string roster;
  std::string routine;  // id of a shipped routine, or a file name ending in .toml
  std::string strip;
  std::string restrictions;  // may be empty
  std::string catalogue;     // the club's own folder, may be empty
};

// Where the squad file states what only the whole evening can contradict.
struct SquadPlaces {
  Place turnout;  // tonight.turnout, else in_roster, else roster
  Place late;
  Place age;
  Place name;
  Place in_roster;  // else roster
  Place routine;
  Place match_day_routine;
};

struct Squad {
  std::string club;
  std::string name;
  SquadFiles files;
  std::string in_roster;  // empty: everybody in the roster
  std::optional<int> age;
  bool has_slot = true;  // else the file states only its week, and date to days_to_match mean nothing
  Date date;
  TimeOfDay start;
  Seconds slot;
  std::optional<int> days_to_match;
  std::optional<int> turnout;
  int late = 0;
  std::vector<std::string> away;
  std::vector<std::string> bans;
  std::vector<Pin> pins;
  Breaks breaks;
  std::string no_session;
  std::vector<std::string> remarks;
  bool free_composition = false;
  bool more_than_routine = false;
  std::uint64_t seed = 1;
  Kit kit;
  std::map<std::string, Exposure> taught;
  int pace_thousandths = 1000;
  people::PartnerRules partners;
  ChangeWeights weights;
  Weekly weekly;
  SquadPlaces places;
};

// Names of drills are checked against the catalogue, those of players against the roster.
Result<Squad> read_squad(const Document& document, const catalogue::Catalogue& catalogue,
                         const std::vector<people::Player>& roster);

// Who of the roster belongs to the squad and is neither away nor sitting out tonight, in roster order.
std::vector<people::Player> players_tonight(const Squad& squad, const std::vector<people::Player>& roster,
                                            const people::Restrictions& restrictions);

// Puts the evening together. A restriction of a whole squad holds where the squad file's in_roster or name says that
// squad; without in_roster, where anybody of the roster belongs to it. File and routine faults are behind us; what can
// still fail: a squad file without [slot], nobody there, more players than the app is made for, no age to go by. All
// such faults are collected.
Result<Evening> make_evening(const Squad& squad, const Strip& strip, const std::vector<people::Player>& roster,
                             const people::Restrictions& restrictions);

}  // namespace lanework::session
