#include "core/evidence/mixed/nb2_objective.h"

#include <Eigen/Core>
#include <algorithm>
#include <cmath>

namespace lanework::evidence {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

// So many squads are looked at together: their sums stay near the processor.
constexpr std::size_t kTogether = 128;
// A step of Halley's this short leaves an error of its third power.
constexpr double kNear = 1e-5;

// The rows of one squad.
class SquadAt {
 public:
  explicit SquadAt(const SquadRows& rows)
      : rows_(rows),
        room_(rows.room()),
        means_by_size_(rows.most_rows()),
        both_(rows.most_rows()),
        close_(6, std::vector<double>(rows.most_rows())),
        weights_(rows.most_rows()) {}

  // One exponential a row.
  void begin(std::size_t squad, const std::vector<double>& coefficients, double log_size, double size,
             const double* events, double sum_of_events) {
    squad_ = squad;
    count_ = rows_.rows(squad);
    rows_.log_means(squad, coefficients, means_by_size_.data(), room_);
    exponentials({means_by_size_.data(), count_}, log_size);
    for (std::size_t row = 0; row < count_; ++row) both_[row] = events[row] + size;
    events_ = sum_of_events;
  }

  // Where the log density of the effect is highest. It is log-concave: each count's is.
  [[nodiscard]] double mode(double variance) const {
    double z = 0;
    for (int step = 0; step < 200; ++step) {
      const ShareSums sums = sum_shares(means(), both_.data(), std::exp(z));
      const double slope = events_ - sums.p - z / variance;
      const double bend = -sums.spread - 1 / variance;
      const double third = -sums.leaning;
      // Halley's step; Newton's where that would go astray.
      const double bent = 2 * bend * bend - slope * third;
      const double move = bent > bend * bend ? -2 * slope * bend / bent : -slope / bend;
      z += std::clamp(move, -1.0, 1.0);
      if (std::abs(move) <= kNear) break;
    }
    return z;
  }

  // One logarithm a row.
  ShareRowSums look(double z) {
    ShareRowSums sums = share_rows(means(), both_.data(), std::exp(z), close());
    sums.t1 += events_;
    return sums;
  }

  // Weighted sums of the columns, each row weighing so much by its place in what look() found.
  void weigh(const std::vector<double>& weights, double sum, double* design) {
    rows_.weigh(squad_, weights.data(), sum, design, room_);
  }
  void weigh_squares(const double* design, double* squares) {
    rows_.weigh_squares(squad_, weights_.data(), design, squares, room_);
  }
  // t2 + lambda t3 - n t4.
  const std::vector<double>& bend_weights(double lambda, double n) {
    combine(t2().data(), t3().data(), close_[5].data(), count_, lambda, n, weights_.data());
    return weights_;
  }
  const std::vector<double>& slope_weights(double lambda, double n) {
    for (std::size_t row = 0; row < count_; ++row) weights_[row] = -both_[row] * close_[0][row];
    combine(weights_.data(), t2().data(), t3().data(), count_, lambda, n, weights_.data());
    return weights_;
  }
  const std::vector<double>& size_weights(double lambda, double n) {
    evidence::size_weights(close(), count_, lambda, n, weights_.data());
    return weights_;
  }
  [[nodiscard]] const std::vector<double>& t2() const { return close_[3]; }
  [[nodiscard]] const std::vector<double>& t3() const { return close_[4]; }
  [[nodiscard]] double events() const { return events_; }

 private:
  const SquadRows& rows_;
  SquadRows::Room room_;
  std::size_t squad_ = 0;
  std::size_t count_ = 0;
  double events_ = 0;
  std::vector<double> means_by_size_;
  std::vector<double> both_;  // count + size
  std::vector<std::vector<double>> close_;
  std::vector<double> weights_;

  [[nodiscard]] std::span<const double> means() const { return {means_by_size_.data(), count_}; }
  ShareRows close() {
    return {close_[0].data(), close_[1].data(), close_[2].data(), close_[3].data(), close_[4].data(), close_[5].data()};
  }
};

// The sum over squads. Of one at the mode z of its effect, of variance v (0: it has none): q is the curvature of the
// counts, n minus half the logarithm of 1 + v q, lambda as in club_term.cpp.
class Sum {
 public:
  Sum(const SquadRows& rows, double size, double variance, ObjectiveValue& out)
      : rows_(rows),
        columns_(static_cast<Index>(rows.columns())),
        size_(size),
        v_(variance),
        out_(out),
        gradient_(VectorXd::Zero(columns_)),
        squares_(VectorXd::Zero(columns_ * (columns_ + 1) / 2)),
        by_size_(VectorXd::Zero(columns_)),
        by_deviation_(VectorXd::Zero(columns_)),
        coupled_(MatrixXd::Zero(columns_, columns_)),
        third_(columns_, static_cast<Index>(kTogether)),
        move_(columns_, static_cast<Index>(kTogether)),
        beside_(columns_, static_cast<Index>(kTogether)),
        slope_x_(columns_),
        bend_x_(columns_),
        size_x_(columns_),
        t2_x_(columns_),
        t3_x_(columns_),
        own_squares_(squares_.size()) {}

  void add(double z, SquadAt& at) {
    const ShareRowSums sums = at.look(z);
    const double t2 = sums.t2;
    const double t3 = sums.t3;
    const double whole = 1 - v_ * t2;
    const double gamma = v_ / whole;
    const double n_q = -gamma / 2;
    const double n_qq = gamma * gamma / 2;
    const double lambda = -gamma * n_q * t3;
    out_.log_likelihood += at.events() * z - sums.both_level;
    // Of a row: slope, bend in the effect twice, in the effect and the size.
    at.weigh(at.slope_weights(lambda, n_q), sums.t1 - at.events() + lambda * t2 - n_q * t3, slope_x_.data());
    gradient_ += slope_x_;
    const double by_size = sums.p + lambda * sums.spread - n_q * sums.leaning;
    at.weigh(at.size_weights(lambda, n_q), by_size, size_x_.data());
    const double mixed = t2 + lambda * t3 - n_q * sums.t4;
    at.weigh(at.bend_weights(lambda, n_q), mixed, bend_x_.data());
    at.weigh_squares(bend_x_.data(), own_squares_.data());
    squares_ += own_squares_;
    size_x_ = -bend_x_ - size_ * size_x_;
    by_size_ += size_x_;
    const double s_t1 = -t2 - size_ * sums.p;
    const double s_t2 = -t3 - size_ * sums.spread;
    const std::size_t at_size = rows_.columns();
    out_.gradient[at_size] += -sums.t1 - size_ * sums.level + lambda * s_t1 - n_q * s_t2;
    out_.bend(at_size, at_size) += t2 + 2 * size_ * sums.p - size_ * sums.level +
                                   lambda * (t3 + 2 * size_ * sums.spread - size_ * sums.p) -
                                   n_q * (sums.t4 + size_ * (2 * sums.leaning - sums.spread));
    if (v_ == 0) return;
    at.weigh(at.t2(), t2, t2_x_.data());
    at.weigh(at.t3(), t3, t3_x_.data());
    const double mixed_size = -mixed - size_ * by_size;
    // How the mode moves, and what that adds.
    const std::size_t at_deviation = at_size + 1;
    const double m_zz = mixed - 1 / v_ + n_qq * t3 * t3;
    const double m_z_size = mixed_size + n_qq * s_t2 * t3;
    const double n_q_tau = -v_ / (whole * whole);
    const double m_z_tau = 2 * z / v_ + 2 * lambda / v_ - n_q_tau * t3;
    const double move_size = gamma * s_t1;
    const double move_tau = 2 * z / whole;
    bend_x_ += n_qq * t3 * t3_x_;
    t2_x_ *= gamma;
    third_.col(together_) = gamma * std::sqrt(0.5) * t3_x_;
    move_.col(together_) = t2_x_;
    beside_.col(together_) = bend_x_ + m_zz / 2 * t2_x_;
    if (++together_ == static_cast<Index>(kTogether)) couple();
    by_size_ += n_qq * s_t2 * t3_x_ + move_size * bend_x_ + (m_z_size + m_zz * move_size) * t2_x_;
    by_deviation_ += -n_q_tau * t3_x_ + move_tau * bend_x_ + (m_z_tau + m_zz * move_tau) * t2_x_;
    out_.bend(at_size, at_size) += n_qq * s_t2 * s_t2 + 2 * m_z_size * move_size + m_zz * move_size * move_size;
    out_.bend(at_deviation, at_size) +=
        -n_q_tau * s_t2 + m_z_size * move_tau + move_size * m_z_tau + m_zz * move_size * move_tau;
    out_.log_likelihood -= z * z / (2 * v_) + std::log(whole) / 2;
    out_.gradient[at_deviation] += z * z / v_ + 2 * lambda * z / v_ + v_ * t2 / whole;
    out_.bend(at_deviation, at_deviation) += -2 * z * z / v_ - 4 * lambda * z / v_ + 2 * v_ * t2 / (whole * whole) +
                                             2 * m_z_tau * move_tau + m_zz * move_tau * move_tau;
  }

  void finish() {
    couple();
    Index square = 0;
    for (Index c = 0; c < columns_; ++c) {
      const auto at = static_cast<std::size_t>(c);
      out_.gradient[at] += gradient_(c);
      for (Index d = 0; d <= c; ++d) out_.bend(at, static_cast<std::size_t>(d)) += squares_(square++) + coupled_(c, d);
      out_.bend(rows_.columns(), at) += by_size_(c);
      if (v_ != 0) out_.bend(rows_.columns() + 1, at) += by_deviation_(c);
    }
  }

 private:
  const SquadRows& rows_;
  Index columns_;
  double size_;
  double v_;
  ObjectiveValue& out_;
  VectorXd gradient_;
  VectorXd squares_;
  VectorXd by_size_;
  VectorXd by_deviation_;
  MatrixXd coupled_;
  // Of squads side by side.
  MatrixXd third_;
  MatrixXd move_;
  MatrixXd beside_;
  Index together_ = 0;
  // Weighted sums of the columns of one squad.
  VectorXd slope_x_;
  VectorXd bend_x_;
  VectorXd size_x_;
  VectorXd t2_x_;
  VectorXd t3_x_;
  VectorXd own_squares_;

  void couple() {
    const auto third = third_.leftCols(together_);
    const auto move = move_.leftCols(together_);
    const auto beside = beside_.leftCols(together_);
    coupled_.noalias() += third * third.transpose();
    coupled_.noalias() += move * beside.transpose();
    coupled_.noalias() += beside * move.transpose();
    together_ = 0;
  }
};

}  // namespace

Nb2Objective::Nb2Objective(const Frame& frame) : constants_(constants_of(frame)), rows_(frame), events_(frame.events) {
  for (const double events : frame.events) {
    if (events == 0) continue;
    const auto count = static_cast<std::size_t>(events);
    if (rows_above_.size() < count) rows_above_.resize(count, 0);
    ++rows_above_[count - 1];
  }
  for (std::size_t k = rows_above_.size(); k-- > 1;) rows_above_[k - 1] += rows_above_[k];
}

// Gamma functions of whole steps apart, as sums: exact also where the size is large.
Nb2Objective::OfSize Nb2Objective::of_size(double size) const {
  OfSize out;
  for (std::size_t k = 0; k < rows_above_.size(); ++k) {
    const auto step = static_cast<double>(k);
    const double share = size / (size + step);
    out.value += rows_above_[k] * std::log1p(step / size);
    out.first += rows_above_[k] * share;
    out.second += rows_above_[k] * share * step / (size + step);
  }
  return out;
}

ObjectiveValue Nb2Objective::at(const std::vector<double>& coefficients, double log_size,
                                std::optional<double> log_deviation) const {
  const std::size_t columns = rows_.columns();
  const double size = std::exp(log_size);
  const double variance = log_deviation ? std::exp(2 * *log_deviation) : 0;
  ObjectiveValue out(columns + (log_deviation ? 2 : 1));
  const OfSize alone = of_size(size);
  out.log_likelihood = constants_.log_likelihood + alone.value;
  out.gradient[columns] = alone.first;
  out.bend(columns, columns) = alone.second;
  for (std::size_t c = 0; c < columns; ++c) {
    out.log_likelihood += constants_.events_by_column[c] * coefficients[c];
    out.gradient[c] = constants_.events_by_column[c];
  }
  SquadAt at(rows_);
  Sum sum(rows_, size, variance, out);
  for (std::size_t squad = 0; squad < rows_.squads(); ++squad) {
    at.begin(squad, coefficients, log_size, size, events(squad), constants_.squad_events[squad]);
    sum.add(log_deviation ? at.mode(variance) : 0, at);
  }
  sum.finish();
  out.mirror();
  return out;
}

std::vector<RandomEffect> Nb2Objective::effects(const std::vector<double>& coefficients, double log_size,
                                                double log_deviation) const {
  std::vector<RandomEffect> out;
  const double variance = std::exp(2 * log_deviation);
  SquadAt at(rows_);
  for (std::size_t squad = 0; squad < rows_.squads(); ++squad) {
    at.begin(squad, coefficients, log_size, std::exp(log_size), events(squad), constants_.squad_events[squad]);
    const double mode = at.mode(variance);
    out.push_back({mode, variance / (1 - variance * at.look(mode).t2)});
  }
  return out;
}

double Nb2Objective::slope_at_no_effect(const std::vector<double>& coefficients, double log_size) const {
  double sum = 0;
  SquadAt at(rows_);
  for (std::size_t squad = 0; squad < rows_.squads(); ++squad) {
    at.begin(squad, coefficients, log_size, std::exp(log_size), events(squad), constants_.squad_events[squad]);
    const ShareRowSums sums = at.look(0);
    sum += (sums.t1 * sums.t1 + sums.t2) / 2;
  }
  return sum;
}

}  // namespace lanework::evidence
