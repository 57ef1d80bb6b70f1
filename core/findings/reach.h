// Are the warm-ups done, by whom, and how well: reach, adoption, dose, fidelity and whether they last, squad by squad;
// and the drills that are left out, or that coaches ask for help with.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "core/records/season.h"
#include "core/records/week_hours.h"

namespace lanework::findings {

// A warm-up that most did counts whole, one that half did half; own judgement.
inline constexpr std::array<double, records::kWarmUps> kDoneShare = {1.0, 0.5, 0.2, 0.0};
// Warm-ups a week from which a squad is said to have taken them up; own judgement ('two or three times a week').
inline constexpr double kTakenUpAWeek = 1;

struct SquadReach {
  std::size_t squad = 0;
  std::array<int, records::kWarmUps + 1> sessions{};  // by how many did it; the last: not known
  int weeks_with_sessions = 0;
  int weeks_known = 0;  // of them: in which it is known of a session at least
  // Done a week, in weeks of which it is known; sessions that nobody knows of as the others of their week. Empty where
  // nothing is known.
  std::optional<double> warm_ups_a_week;
  std::optional<double> first_half;  // of the season
  std::optional<double> second_half;

  [[nodiscard]] int known() const { return sessions[0] + sessions[1] + sessions[2] + sessions[3]; }
  [[nodiscard]] bool reached() const { return sessions[0] + sessions[1] + sessions[2] > 0; }
  [[nodiscard]] bool taken_up() const { return warm_ups_a_week.value_or(0) >= kTakenUpAWeek; }
};

// The squads of an age band; means are of those of which something is known, each squad alike.
struct AgeReach {
  std::string age_band;  // empty: squads without one
  int squads = 0;
  int reached = 0;
  int taken_up = 0;
  int most_did_it = 0;  // sessions
  int sessions = 0;     // of which it is known
  std::optional<double> warm_ups_a_week;
  std::optional<double> first_half;
  std::optional<double> second_half;
};

struct DrillNamed {
  std::string drill;
  int left_out = 0;      // sessions
  int needing_help = 0;  // sessions
};

struct Reach {
  std::vector<SquadReach> squads;
  std::vector<AgeReach> ages;      // youngest first, squads without an age band last
  std::vector<DrillNamed> drills;  // most often named first
  [[nodiscard]] int reached() const;
  [[nodiscard]] int taken_up() const;
};

Reach reach_of_warm_ups(const records::Season& season, const records::WeekTable& weeks);

// Warm-ups done in the sessions of a squad's week, and whether any of them is known.
struct WeekDose {
  double warm_ups = 0;
  int known_sessions = 0;
  int sessions = 0;
};
WeekDose dose_of(const records::WeekTable& weeks, std::size_t squad, std::size_t week);

// Warm-ups done in a squad's week, where sessions that nobody knows of are thought to be like the others of the week;
// empty where none is known.
std::optional<double> warm_ups_in_week(const records::WeekTable& weeks, std::size_t squad, std::size_t week);

// 'Lately' is the mean of so many weeks, this one the last: own judgement.
inline constexpr std::size_t kLateWeeks = 4;
// Warm-ups a week of the last weeks with sessions; empty where none of them is known.
std::optional<double> warm_ups_lately(const records::WeekTable& weeks, std::size_t squad, std::size_t week);

}  // namespace lanework::findings
