// The catalogue: every drill with the tables that give its numbers meaning.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "core/base/units.h"
#include "core/catalogue/drill.h"
#include "core/catalogue/emphasis.h"

namespace lanework::catalogue {

// From an age on, work of the family that is not eccentric counts for less.
struct EccentricFirst {
  int from_age;            // of the youngest
  int other_work_percent;  // what the rest counts for
  std::vector<std::string> sources;
};

// families.toml: one row a family, in the order of Family.
struct FamilyRow {
  Family family;
  std::string name;           // as people read it: 'hip and groin'
  int rank;                   // order inside a phase
  std::vector<Phase> phases;  // one, or two for at most two families
  bool required;              // every session should touch it
  int weight;                 // 1..8: how much a short dose of it hurts (own judgement, editable)
  Seconds session_work;       // the dose that counts as four quarters: seconds of work a player
  Seconds week_work;          // what a week of a block aims at
  std::string why;            // one line
  std::vector<std::string> sources;
  std::vector<std::string> week_sources;  // of week_work; empty where it is two and a half full sessions
  std::optional<EccentricFirst> eccentric_first;
  std::optional<Emphasis> emphasis;  // where the club's weight stands in the place of the catalogue's
};

// limits.toml: ceilings a session and a week for one age band. Loads in whole units.
struct Ceilings {
  int age_from;
  int age_to;
  std::int64_t contacts_session;  // weighted landings in the warm-up
  std::int64_t contacts_week;
  std::int64_t eccentric_session;  // eccentric hamstring repetitions
  std::int64_t eccentric_week;
  std::int64_t hard_running_session;  // metres
  std::int64_t hard_running_week;
  std::vector<std::string> sources;
};

// limits.toml: what the days before a match take off the session ceilings.
struct MatchDistance {
  int days;              // 0 the match day itself, 1 the day before, ...
  int contacts_percent;  // of the session ceiling
  int eccentric_percent;
  int hard_running_percent;
  bool new_drills;  // may anything new be taught
  std::vector<std::string> sources;
};

struct Limits {
  std::vector<Ceilings> ceilings;                 // bands do not overlap and cover 8..19
  std::vector<MatchDistance> match;               // days ascending
  int warm_up_share_percent = 0;                  // of the caps on landings; already taken in 'ceilings'
  std::array<int, 3> contact_weight_thousandths;  // low, medium, high
  int most_new_drills = 2;
  std::vector<std::string> sources;  // of the contact weights and the new-drill limit
};

const Ceilings& ceilings_at(const Limits& limits, int age);  // age clamped to 8..19
// The row of that many days to the match; one that takes nothing off where there is none, or no match in sight.
MatchDistance match_distance(const Limits& limits, std::optional<int> days_to_match);

// gaits.toml: how fast players of an age move, in the order of ages 8..19.
struct Gait {
  std::string key;  // 'walk', 'jog', 'run', ...
  std::string name;
  std::array<MillimetresPerSecond, 12> speed;  // typical (median) speed at age 8, 9, ..., 19
  int spread_thousandths;                      // standard deviation of log speed between players
  std::vector<std::string> sources;
};

// sources.toml
struct Source {
  std::string key;
  std::string author;  // empty for 'common-practice', 'own-judgement' and 'from-memory'
  int year = 0;
  std::string doi;
  std::string note;  // what it vouches for
  bool unverified = false;
};

struct Catalogue {
  std::vector<Drill> drills;        // by id, ascending
  std::vector<FamilyRow> families;  // in the order of Family
  Limits limits;
  std::vector<Gait> gaits;
  std::vector<Source> sources;

  [[nodiscard]] const Drill* find(const std::string& id) const;
  [[nodiscard]] const Gait* gait(const std::string& key) const;
  [[nodiscard]] const FamilyRow& family(Family f) const { return families[static_cast<std::size_t>(f)]; }
  [[nodiscard]] const Ceilings& ceilings_for(int age) const;  // age clamped to 8..19
  [[nodiscard]] const Source* source(const std::string& key) const;
};

// Speed of a gait at an age. For 'run' the drill's share of top speed and the lane's length matter: the
// mean speed over a lane from a standing start is less than the share of top speed (see clock.md).
MillimetresPerSecond gait_speed(const Gait& gait, int age);

}  // namespace lanework::catalogue
