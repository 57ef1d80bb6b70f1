#include "core/evidence/mixed/term_curve.h"

#include <cmath>

#include "core/evidence/normal.h"

namespace lanework::evidence {
namespace {

std::vector<double> columns_at(const FrameTerm& term, double value) {
  std::vector<double> out(term.count, value);
  if (term.curve) term.curve->row(value, out.data());
  return out;
}

}  // namespace

std::vector<CurvePoint> term_curve(const CountModel& model, const FrameTerm& term, std::span<const double> values,
                                   double reference) {
  const std::vector<double> from = columns_at(term, reference);
  const auto parameters =
      static_cast<std::size_t>(std::llround(std::sqrt(static_cast<double>(model.judged.covariance.size()))));
  const double reach = reach_of(model.asked.level);
  std::vector<CurvePoint> out;
  for (const double value : values) {
    std::vector<double> moved = columns_at(term, value);
    double log_times = 0;
    double variance = 0;
    for (std::size_t i = 0; i < moved.size(); ++i) {
      moved[i] -= from[i];
      log_times += moved[i] * model.coefficients[term.first + i].estimate;
    }
    for (std::size_t i = 0; i < moved.size(); ++i) {
      for (std::size_t j = 0; j < moved.size(); ++j)
        variance += moved[i] * moved[j] * model.judged.covariance[(term.first + i) * parameters + term.first + j];
    }
    const double off = reach * std::sqrt(std::max(variance, 0.0));
    out.push_back({value, std::exp(log_times), {std::exp(log_times - off), std::exp(log_times + off)}});
  }
  return out;
}

}  // namespace lanework::evidence
