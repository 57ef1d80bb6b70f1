// A fitted model of counts as a reader wants it: every coefficient with its interval, what each term brings, how much
// squads and clubs differ by themselves, and how good the fit is as a fit.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/evidence/interval.h"
#include "core/evidence/mixed/build_frame.h"
#include "core/evidence/mixed/fit_judged.h"
#include "core/evidence/mixed/random_effect.h"

namespace lanework::evidence {

enum class CountFamily : std::uint8_t { kPoisson, kNegativeBinomial };

struct ModelAsked {
  CountFamily family = CountFamily::kPoisson;
  bool squads_differ = true;  // by an effect of their own
  int points = 1;             // of the rule for the squads' effects; 1: Laplace's method
  double level = kUsualLevel;
};

struct CoefficientFound {
  std::string name;
  double estimate = 0;  // of the logarithm of the rate
  double error = 0;
  Interval limits;  // estimate and so many errors to each side
  double p = 1;     // of the same normal approximation
};

// A standard deviation of effects on the log rate, or the size of a negative binomial.
struct SpreadFound {
  double estimate = 0;
  std::optional<Interval> limits;  // on the log scale; none where the estimate lies at the edge of what can be
};

// Twice what the log likelihood loses without a part of the model.
struct LikelihoodRatio {
  std::string without;
  double chi_squared = 0;
  int degrees = 0;
  double p = 1;  // of a spread half the chi-squared one's: it cannot be below 0
};

struct CountModel {
  ModelAsked asked;
  std::vector<CoefficientFound> coefficients;
  std::optional<SpreadFound> squads;
  std::optional<SpreadFound> clubs;
  std::optional<SpreadFound> size;  // infinite: counts vary no more than chance
  double log_likelihood = 0;
  std::vector<LikelihoodRatio> tests;  // each term left out, then the effects of squads and clubs
  std::vector<RandomEffect> squad_effects;
  std::vector<RandomEffect> club_effects;
  // Squared errors of the counts by those that their means explain, of a Poisson model; about 1 where they fit, and how
  // many standard errors it is away from that.
  double dispersion = 1;
  double dispersion_errors = 0;
  Judged judged;
};

// REQUIRES: why_not_estimable() has nothing to say; with clubs the Poisson family and one point.
CountModel fit_model(const BuiltFrame& built, const ModelAsked& asked);

// The same rows without some columns.
Frame without_columns(const Frame& frame, std::size_t first, std::size_t count);

}  // namespace lanework::evidence
