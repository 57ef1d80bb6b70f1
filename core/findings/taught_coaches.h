// Do squads whose coach was taught the warm-up do more of it, and do more of the players take part? Described squad by
// squad, never as caused: who is sent to be taught may be keener. What is known of how well it is done is what coaches
// write down of most, half or few; visits of an observer are not in the records.
#pragma once

#include <optional>

#include "core/evidence/mean_difference.h"
#include "core/records/season.h"
#include "core/records/week_hours.h"

namespace lanework::findings {

// A squad counts with so many weeks of which warm-ups are known: own judgement.
inline constexpr int kLeastTaughtWeeks = 4;

struct TaughtArm {
  int squads = 0;
  double warm_ups_a_week = 0;  // mean of squads
  int squads_with_fidelity = 0;
  double most_did = 0;  // of their sessions with a warm-up, the share in which most players did it; mean of squads
};

struct TaughtCoaches {
  TaughtArm taught;      // weeks that begin on the day of teaching or later
  TaughtArm not_taught;  // squads without such a day in the season; all their weeks
  // Taught less not taught, by Welch's t; empty with fewer than two squads in an arm.
  std::optional<evidence::MeanDifference> a_week;
  std::optional<evidence::MeanDifference> most_did;
  // Of squads with weeks before and after: after less before.
  int squads_both = 0;
  double before = 0;
  double after = 0;
  std::optional<evidence::MeanDifference> change;
};

// Empty where no squad has a day of teaching.
std::optional<TaughtCoaches> taught_coaches(const records::Season& season, const records::WeekTable& weeks,
                                            double level);

}  // namespace lanework::findings
