// How much has to be watched until an effect of a given size would show.
#pragma once

namespace lanework::evidence {

// How sure, and how seldom wrong where there is nothing.
struct PowerAsked {
  double level = 0.95;  // of the interval, or one less the chance of a false alarm, both sides
  double power = 0.80;  // the chance to see the effect
};

// Two arms of clusters, such as squads with and without warm-ups.
struct ClusterDesign {
  double rate = 0;             // of the one arm, per hour
  double other_rate = 0;       // of the other, per hour; not the same
  double hours_a_cluster = 0;  // > 0
  double variation = 0;        // between true rates of clusters of one arm: standard deviation by mean, >= 0
  bool matched = false;        // clusters in pairs; then the variation is that within a pair
};

// Clusters needed in each arm, before rounding up: Hayes RJ, Bennett S, Int J Epidemiol 1999, doi 10.1093/ije/28.2.319
// (the formula from memory).
double clusters_an_arm(const ClusterDesign& design, const PowerAsked& asked);

// The variation of clusters whose log rates are normal with this standard deviation.
double variation_of(double log_deviation);

// Events needed in all, where so large a share of the hours is of the one arm: Schoenfeld DA, Biometrics 1983, doi
// 10.2307/2531021. For independent events; clusters need more.
double events_needed(double ratio, double share_of_hours, const PowerAsked& asked);

// By how much the variance of a mean grows where so many of a cluster are watched that are so alike.
double design_effect(double a_cluster, double correlation);

}  // namespace lanework::evidence
