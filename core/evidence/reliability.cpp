#include "core/evidence/reliability.h"

#include <algorithm>
#include <boost/math/distributions/fisher_f.hpp>
#include <cmath>

#include "core/evidence/agreement_limits.h"
#include "core/evidence/normal.h"

namespace lanework::evidence {
namespace {

double f_quantile(double share, double above, double below) {
  return boost::math::quantile(boost::math::fisher_f(above, below), share);
}

Correlation of_the_mean(const Correlation& one, std::size_t raters) {
  return {correlation_of_mean(one.estimate, raters),
          {correlation_of_mean(one.limits.low, raters), correlation_of_mean(one.limits.high, raters)}};
}

// Of subjects against an error with so many degrees of freedom.
Correlation one_of(double subjects, double error, double n, double k, double degrees, double level) {
  const double upper = (1 + level) / 2;
  const double ratio = subjects / error;
  const auto correlation = [&](double f) { return (f - 1) / (f + k - 1); };
  return {
      correlation(ratio),
      {correlation(ratio / f_quantile(upper, n - 1, degrees)), correlation(ratio * f_quantile(upper, degrees, n - 1))}};
}

// The limits of agreement by Satterthwaite's degrees of freedom.
Correlation agreement_of(const MeanSquares& squares, double n, double k, double level) {
  const double b = squares.subjects;
  const double j = squares.raters;
  const double e = squares.residual;
  const double estimate = (b - e) / (b + (k - 1) * e + k * (j - e) / n);
  const double ratio = j / e;
  const double rest = n * (1 + (k - 1) * estimate) - k * estimate;
  const double top = (k - 1) * (n - 1) * std::pow(k * estimate * ratio + rest, 2);
  const double degrees = top / ((n - 1) * std::pow(k * estimate * ratio, 2) + rest * rest);
  const double upper = (1 + level) / 2;
  const double high = f_quantile(upper, n - 1, degrees);
  const double low = f_quantile(upper, degrees, n - 1);
  const double others = k * j + (k * n - k - n) * e;
  return {estimate, {n * (b - high * e) / (high * others + n * b), n * (low * b - e) / (others + n * low * b)}};
}

}  // namespace

Correlations intraclass_correlations(const Scores& scores, double level) {
  const auto n = static_cast<double>(scores.size());
  const auto k = static_cast<double>(scores.front().size());
  std::vector<double> rater_means(scores.front().size(), 0);
  double grand = 0;
  for (const std::vector<double>& subject : scores) {
    for (std::size_t r = 0; r < subject.size(); ++r) {
      rater_means[r] += subject[r] / n;
      grand += subject[r] / (n * k);
    }
  }
  double subjects = 0;
  double within = 0;
  for (const std::vector<double>& subject : scores) {
    double mean = 0;
    for (const double score : subject) mean += score / k;
    subjects += k * (mean - grand) * (mean - grand);
    for (const double score : subject) within += (score - mean) * (score - mean);
  }
  double raters = 0;
  for (const double mean : rater_means) raters += n * (mean - grand) * (mean - grand);
  Correlations out;
  out.mean_squares = {subjects / (n - 1), within / (n * (k - 1)), raters / (k - 1),
                      std::max(0.0, within - raters) / ((n - 1) * (k - 1))};
  const MeanSquares& squares = out.mean_squares;
  out.one_random_way = one_of(squares.subjects, squares.within, n, k, n * (k - 1), level);
  out.one_consistency = one_of(squares.subjects, squares.residual, n, k, (n - 1) * (k - 1), level);
  out.one_agreement = agreement_of(squares, n, k, level);
  out.mean_random_way = of_the_mean(out.one_random_way, scores.front().size());
  out.mean_agreement = of_the_mean(out.one_agreement, scores.front().size());
  out.mean_consistency = of_the_mean(out.one_consistency, scores.front().size());
  return out;
}

double error_of_consistency(const MeanSquares& mean_squares) { return std::sqrt(mean_squares.residual); }

double error_of_agreement(const MeanSquares& mean_squares, std::size_t subjects) {
  const double raters = std::max(0.0, mean_squares.raters - mean_squares.residual) / static_cast<double>(subjects);
  return std::sqrt(raters + mean_squares.residual);
}

double detectable_change(double error, double level) { return reach_of(level) * std::sqrt(2.0) * error; }

AgreementWeights only_equal(std::size_t classes) {
  AgreementWeights weights(classes, std::vector<double>(classes, 0));
  for (std::size_t i = 0; i < classes; ++i) weights[i][i] = 1;
  return weights;
}

AgreementWeights linear_weights(std::size_t classes) {
  AgreementWeights weights(classes, std::vector<double>(classes, 0));
  for (std::size_t i = 0; i < classes; ++i) {
    for (std::size_t j = 0; j < classes; ++j)
      weights[i][j] = 1 - static_cast<double>(i > j ? i - j : j - i) / static_cast<double>(classes - 1);
  }
  return weights;
}

AgreementWeights quadratic_weights(std::size_t classes) {
  AgreementWeights weights = linear_weights(classes);
  for (std::vector<double>& row : weights) {
    for (double& weight : row) weight = 1 - (1 - weight) * (1 - weight);
  }
  return weights;
}

Kappa kappa(const Classed& counts, const AgreementWeights& weights, double level) {
  const std::size_t classes = counts.size();
  double all = 0;
  for (const std::vector<double>& row : counts) {
    for (const double count : row) all += count;
  }
  std::vector<double> first(classes, 0);
  std::vector<double> second(classes, 0);
  for (std::size_t i = 0; i < classes; ++i) {
    for (std::size_t j = 0; j < classes; ++j) {
      first[i] += counts[i][j] / all;
      second[j] += counts[i][j] / all;
    }
  }
  double observed = 0;
  double by_chance = 0;
  std::vector<double> of_first(classes, 0);   // the mean weight of a class of the first rater
  std::vector<double> of_second(classes, 0);  // and of the second
  for (std::size_t i = 0; i < classes; ++i) {
    for (std::size_t j = 0; j < classes; ++j) {
      observed += weights[i][j] * counts[i][j] / all;
      by_chance += weights[i][j] * first[i] * second[j];
      of_first[i] += weights[i][j] * second[j];
      of_second[j] += weights[i][j] * first[i];
    }
  }
  Kappa out;
  out.estimate = (observed - by_chance) / (1 - by_chance);
  const double short_of = 1 - out.estimate;
  double sum = 0;
  for (std::size_t i = 0; i < classes; ++i) {
    for (std::size_t j = 0; j < classes; ++j)
      sum += counts[i][j] / all * std::pow(weights[i][j] - (of_first[i] + of_second[j]) * short_of, 2);
  }
  const double variance = sum - std::pow(out.estimate - by_chance * short_of, 2);
  out.error = std::sqrt(std::max(0.0, variance) / all) / (1 - by_chance);
  const double reach = reach_of(level) * out.error;
  out.limits = {out.estimate - reach, out.estimate + reach};
  return out;
}

}  // namespace lanework::evidence
