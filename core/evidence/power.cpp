#include "core/evidence/power.h"

#include <cmath>

#include "core/evidence/normal.h"

namespace lanework::evidence {
namespace {

double square(double x) { return x * x; }
double reaches(const PowerAsked& asked) { return square(reach_of(asked.level) + normal_quantile(asked.power)); }

}  // namespace

double clusters_an_arm(const ClusterDesign& design, const PowerAsked& asked) {
  const double chance = (design.rate + design.other_rate) / design.hours_a_cluster;
  const double between = square(design.variation) * (square(design.rate) + square(design.other_rate));
  const double term = reaches(asked) * (chance + between) / square(design.rate - design.other_rate);
  return (design.matched ? 2 : 1) + term;
}

double variation_of(double log_deviation) { return std::sqrt(std::expm1(square(log_deviation))); }

double events_needed(double ratio, double share_of_hours, const PowerAsked& asked) {
  return reaches(asked) / (share_of_hours * (1 - share_of_hours) * square(std::log(ratio)));
}

double design_effect(double a_cluster, double correlation) { return 1 + (a_cluster - 1) * correlation; }

}  // namespace lanework::evidence
