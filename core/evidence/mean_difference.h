// Means of squads: how far those of two kinds are apart, and how far the same squads have moved; limits by Student's t.
#pragma once

#include <optional>
#include <span>

#include "core/evidence/interval.h"

namespace lanework::evidence {

struct MeanDifference {
  double difference = 0;
  double error = 0;
  double degrees = 0;  // Welch's need not be whole
  Interval limits;
};

// Mean of 'one' less mean of 'other', each with its own variance (Welch BL, Biometrika 1947, doi
// 10.1093/biomet/34.1-2.28; from memory). Empty: fewer than two in either, or all alike.
std::optional<MeanDifference> welch_difference(std::span<const double> one, std::span<const double> other,
                                               double level);

// The mean of differences within pairs (Student, Biometrika 1908, doi 10.1093/biomet/6.1.1). Empty as above.
std::optional<MeanDifference> paired_difference(std::span<const double> differences, double level);

}  // namespace lanework::evidence
