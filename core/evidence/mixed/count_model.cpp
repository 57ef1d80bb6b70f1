#include "core/evidence/mixed/count_model.h"

#include <algorithm>
#include <boost/math/distributions/chi_squared.hpp>
#include <cmath>
#include <utility>

#include "core/evidence/mixed/nb2_fit.h"
#include "core/evidence/mixed/poisson_fit.h"
#include "core/evidence/normal.h"

namespace lanework::evidence {
namespace {

// What both families have in common.
struct Fitted {
  std::vector<double> coefficients;
  double squad_deviation = 0;
  double club_deviation = 0;
  std::optional<double> size;
  double log_likelihood = 0;
  std::vector<RandomEffect> squad_effects;
  std::vector<RandomEffect> club_effects;
  Judged judged;
};

Fitted fitted(const Frame& frame, const ModelAsked& asked, bool squads_differ) {
  if (asked.family == CountFamily::kNegativeBinomial) {
    Nb2Fit fit = squads_differ ? fit_nb2(frame) : fit_nb2_alone(frame);
    return {std::move(fit.coefficients), fit.squad_deviation,          0,  fit.size,
            fit.log_likelihood,          std::move(fit.squad_effects), {}, std::move(fit.judged)};
  }
  PoissonFit fit = squads_differ ? fit_poisson(frame, asked.points) : fit_poisson_alone(frame);
  return {
      std::move(fit.coefficients), fit.squad_deviation,          fit.club_deviation,          std::nullopt,
      fit.log_likelihood,          std::move(fit.squad_effects), std::move(fit.club_effects), std::move(fit.judged)};
}

LikelihoodRatio likelihood_ratio(std::string without, double gained, int degrees, bool at_edge) {
  LikelihoodRatio out{std::move(without), std::max(2 * gained, 0.0), degrees, 1};
  const boost::math::chi_squared distribution(degrees);
  out.p = boost::math::cdf(boost::math::complement(distribution, out.chi_squared));
  if (at_edge) out.p = out.chi_squared > 0 ? out.p / 2 : 1;
  return out;
}

// Limits of a positive number from its logarithm's error, which stands at that parameter of the fit.
SpreadFound spread(double estimate, const Judged& judged, std::size_t parameter, double reach) {
  if (estimate == 0 || std::isinf(estimate)) return {estimate, {}};
  const double error = judged.error(parameter);
  return {estimate, Interval{estimate * std::exp(-reach * error), estimate * std::exp(reach * error)}};
}

void add_spreads(const BuiltFrame& built, const Fitted& fit, double reach, CountModel& out) {
  std::size_t parameter = fit.coefficients.size();
  if (fit.size) {
    out.size = spread(*fit.size, fit.judged, parameter, reach);
    if (!std::isinf(*fit.size)) ++parameter;
  }
  if (!out.asked.squads_differ) return;
  out.squads = spread(fit.squad_deviation, fit.judged, parameter, reach);
  if (fit.squad_deviation > 0) ++parameter;
  if (!built.clubs.empty()) out.clubs = spread(fit.club_deviation, fit.judged, parameter, reach);
}

void add_tests(const BuiltFrame& built, CountModel& out) {
  const ModelAsked& asked = out.asked;
  for (const FrameTerm& term : built.terms) {
    const Frame less = without_columns(built.frame, term.first, term.count);
    const double without = fitted(less, asked, asked.squads_differ).log_likelihood;
    out.tests.push_back(
        likelihood_ratio(term.column, out.log_likelihood - without, static_cast<int>(term.count), false));
  }
  if (!asked.squads_differ) return;
  double squads_only = out.log_likelihood;
  if (!built.clubs.empty()) {
    Frame no_clubs = built.frame;
    no_clubs.club_ends.clear();
    squads_only = fitted(no_clubs, asked, true).log_likelihood;
  }
  const double alone = fitted(built.frame, asked, false).log_likelihood;
  out.tests.push_back(likelihood_ratio("differences between squads", squads_only - alone, 1, true));
  if (!built.clubs.empty())
    out.tests.push_back(likelihood_ratio("differences between clubs", out.log_likelihood - squads_only, 1, true));
}

// By squad of the frame: its own effect and its club's.
std::vector<double> effects_by_squad(const Frame& frame, const CountModel& model) {
  std::vector<double> out(frame.squads(), 0);
  std::size_t club = 0;
  for (std::size_t squad = 0; squad < frame.squads(); ++squad) {
    if (squad < model.squad_effects.size()) out[squad] += model.squad_effects[squad].mode;
    if (frame.club_ends.empty()) continue;
    while (squad >= frame.club_ends[club]) ++club;
    if (club < model.club_effects.size()) out[squad] += model.club_effects[club].mode;
  }
  return out;
}

void add_dispersion(const Frame& frame, CountModel& out) {
  const std::vector<double> effects = effects_by_squad(frame, out);
  double squared = 0;
  double by_mean = 0;
  std::size_t squad = 0;
  for (std::size_t row = 0; row < frame.rows(); ++row) {
    while (row >= frame.squad_ends[squad]) ++squad;
    double log_mean = frame.log_hours[row] + effects[squad];
    for (std::size_t c = 0; c < frame.columns(); ++c)
      log_mean += frame.design[row * frame.columns() + c] * out.coefficients[c].estimate;
    const double mean = std::exp(log_mean);
    squared += (frame.events[row] - mean) * (frame.events[row] - mean) / mean;
    by_mean += 1 / mean;
  }
  const double degrees = static_cast<double>(frame.rows() - frame.columns());
  out.dispersion = squared / degrees;
  out.dispersion_errors = (squared - degrees) / std::sqrt(2 * degrees + by_mean);
}

}  // namespace

CountModel fit_model(const BuiltFrame& built, const ModelAsked& asked) {
  Fitted fit = fitted(built.frame, asked, asked.squads_differ);
  const double reach = reach_of(asked.level);
  CountModel out;
  out.asked = asked;
  out.log_likelihood = fit.log_likelihood;
  for (std::size_t c = 0; c < fit.coefficients.size(); ++c) {
    const double estimate = fit.coefficients[c];
    const double error = fit.judged.error(c);
    out.coefficients.push_back({built.frame.names[c],
                                estimate,
                                error,
                                {estimate - reach * error, estimate + reach * error},
                                two_sided_p(estimate / error)});
  }
  add_spreads(built, fit, reach, out);
  out.judged = std::move(fit.judged);
  out.squad_effects = std::move(fit.squad_effects);
  out.club_effects = std::move(fit.club_effects);
  add_tests(built, out);
  if (asked.family == CountFamily::kPoisson) add_dispersion(built.frame, out);
  return out;
}

Frame without_columns(const Frame& frame, std::size_t first, std::size_t count) {
  Frame out = frame;
  const auto cut = [&](auto& list, std::size_t from) {
    const auto begin = list.begin() + static_cast<std::ptrdiff_t>(from);
    list.erase(begin, begin + static_cast<std::ptrdiff_t>(count));
  };
  cut(out.names, first);
  out.design.clear();
  for (std::size_t row = 0; row < frame.rows(); ++row) {
    for (std::size_t c = 0; c < frame.columns(); ++c)
      if (c < first || c >= first + count) out.design.push_back(frame.design[row * frame.columns() + c]);
  }
  return out;
}

}  // namespace lanework::evidence
