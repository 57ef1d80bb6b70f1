// Watching counts from week to week: a sum that rises with every count above a reference value and falls with every one
// below it, never under 0; it gives the alarm when it reaches the decision limit. (Lucas JM, Technometrics 1985, doi
// 10.1080/00401706.1985.10488030.)
//
// How long it takes to a false alarm is computed, not looked up: the sum moves on a lattice, a Markov chain whose mean
// times to the alarm solve a linear system (Brook D, Evans DA, Biometrika 1972, doi 10.1093/biomet/59.3.539).
#pragma once

#include <cstdint>
#include <span>
#include <vector>

namespace lanework::evidence {

enum class Watch : std::uint8_t { kMore, kFewer };  // than the reference value

// In parts of one event: the lattice on which the sum moves.
struct CusumScheme {
  Watch watch = Watch::kMore;
  int parts = 1;      // of one event, >= 1
  int reference = 0;  // parts; > 0
  int decision = 1;   // parts; the alarm is given at or above it; > 0
};

// The reference value that tells fastest between two means: of the likelihood ratio. REQUIRES: 0 < usual, 0 < changed.
double reference_value(double usual_mean, double changed_mean);

// The sum after each count, from 'start' parts on, in events; it starts anew after an alarm.
std::vector<double> cusum_path(const CusumScheme& scheme, std::span<const std::int64_t> counts, int start);

// Counts until the alarm, on average, where each is Poisson with this mean. REQUIRES: 0 <= start < decision, mean > 0.
double run_length(const CusumScheme& scheme, double mean, int start);

// The least decision limit, in parts, with which it takes at least so many counts on average to a false alarm, up to
// 'most' parts; most + 1 where none does.
int decision_for(CusumScheme scheme, double usual_mean, double run_length_wanted, int most);

}  // namespace lanework::evidence
