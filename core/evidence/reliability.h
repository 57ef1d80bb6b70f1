// How far scores can be trusted: the same subjects scored by several raters, or on several days.
#pragma once

#include <cstddef>
#include <vector>

#include "core/evidence/interval.h"

namespace lanework::evidence {

// [subject][rater], every cell filled.
using Scores = std::vector<std::vector<double>>;

struct MeanSquares {
  double subjects = 0;  // between them
  double within = 0;    // subjects
  double raters = 0;    // between them
  double residual = 0;
};

struct Correlation {
  double estimate = 0;
  Interval limits;
};

// The intraclass correlations of Shrout PE, Fleiss JL, Psychol Bull 1979, doi 10.1037/0033-2909.86.2.420. One: of a
// single score; mean: of the mean of all raters.
struct Correlations {
  MeanSquares mean_squares;
  Correlation one_random_way;  // (1,1): each subject has raters of its own
  // (2,1): the raters are a sample, how high they score counts. Its limits are approximate: agreement_limits.h has ones
  // that hold.
  Correlation one_agreement;
  Correlation one_consistency;   // (3,1): these raters and no others, how high they score does not count
  Correlation mean_random_way;   // (1,k)
  Correlation mean_agreement;    // (2,k)
  Correlation mean_consistency;  // (3,k)
};

// REQUIRES: 2 subjects and 2 raters at least, and scores that are not all alike.
Correlations intraclass_correlations(const Scores& scores, double level);

// The standard error of a single score, in its own units: of raters whose level does not count, or counts.
double error_of_consistency(const MeanSquares& mean_squares);
double error_of_agreement(const MeanSquares& mean_squares, std::size_t subjects);
// The least change between two scores that is more than error, at the level.
double detectable_change(double error, double level);

// Two raters, each subject put into one of several classes; counts [first rater's class][second's].
using Classed = std::vector<std::vector<double>>;
// What an agreement of classes i and j is worth, 1 on the diagonal.
using AgreementWeights = std::vector<std::vector<double>>;
AgreementWeights only_equal(std::size_t classes);
AgreementWeights linear_weights(std::size_t classes);
AgreementWeights quadratic_weights(std::size_t classes);

struct Kappa {
  double estimate = 0;
  double error = 0;  // for an interval: Fleiss JL, Cohen J, Everitt BS, Psychol Bull 1969, doi 10.1037/h0028106
  Interval limits;
};
// REQUIRES: as many classes in rows, columns and weights; a subject at least; not all in one class.
Kappa kappa(const Classed& counts, const AgreementWeights& weights, double level);

}  // namespace lanework::evidence
