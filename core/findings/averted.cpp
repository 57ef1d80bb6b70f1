#include "core/findings/averted.h"

#include <Eigen/Cholesky>
#include <algorithm>
#include <cmath>
#include <vector>

#include "core/base/random.h"

namespace lanework::findings {
namespace {

constexpr int kDraws = 2000;

double averted_at(const evidence::Frame& frame, const std::vector<double>& coefficients,
                  const std::vector<double>& effects, std::size_t column) {
  double sum = 0;
  std::size_t squad = 0;
  for (std::size_t row = 0; row < frame.rows(); ++row) {
    while (row >= frame.squad_ends[squad]) ++squad;
    const double* x = frame.design.data() + row * frame.columns();
    double log_mean = frame.log_hours[row] + effects[squad];
    for (std::size_t c = 0; c < frame.columns(); ++c) log_mean += x[c] * coefficients[c];
    sum += std::exp(log_mean) * std::expm1(-coefficients[column] * x[column]);
  }
  return sum;
}

}  // namespace

Averted averted(const evidence::Frame& frame, const evidence::CountModel& model, std::size_t column, double level) {
  const std::size_t count = model.coefficients.size();
  const auto stride =
      static_cast<std::size_t>(std::llround(std::sqrt(static_cast<double>(model.judged.covariance.size()))));
  std::vector<double> best;
  for (const evidence::CoefficientFound& found : model.coefficients) best.push_back(found.estimate);
  std::vector<double> effects;
  for (const evidence::RandomEffect& effect : model.squad_effects) effects.push_back(effect.mode);
  effects.resize(frame.squads(), 0);
  using Matrix = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;
  const auto size = static_cast<Eigen::Index>(stride);
  const auto wanted = static_cast<Eigen::Index>(count);
  const Eigen::MatrixXd root = Eigen::Map<const Matrix>(model.judged.covariance.data(), size, size)
                                   .topLeftCorner(wanted, wanted)
                                   .llt()
                                   .matrixL();
  std::vector<double> drawn;
  for (std::uint32_t draw = 0; draw < kDraws; ++draw) {
    NormalStream normal(random_key(20261126), 5, 0, draw);
    Eigen::VectorXd z(wanted);
    for (double& one : z) one = normal.next();
    const Eigen::VectorXd off = root * z;
    std::vector<double> at = best;
    for (std::size_t i = 0; i < count; ++i) at[i] += off(static_cast<Eigen::Index>(i));
    drawn.push_back(averted_at(frame, at, effects, column));
  }
  std::sort(drawn.begin(), drawn.end());
  const auto quantile = [&](double share) {
    return drawn[std::min(drawn.size() - 1, static_cast<std::size_t>(share * static_cast<double>(drawn.size())))];
  };
  return {averted_at(frame, best, effects, column), {quantile((1 - level) / 2), quantile((1 + level) / 2)}};
}

}  // namespace lanework::findings
