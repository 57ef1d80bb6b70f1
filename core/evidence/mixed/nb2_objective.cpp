#include "core/evidence/mixed/nb2_objective.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "core/evidence/mixed/nb2_row.h"

namespace lanework::evidence {
namespace {

// One squad at the mode z of its effect, of variance v (0: it has none). Names as in the row; q is the curvature of the
// counts, n minus half the logarithm of 1 + v q, lambda as in club_term.cpp.
class SquadSum {
 public:
  // design: of the squad's first row.
  SquadSum(std::vector<Nb2Row> rows, const double* design, std::size_t columns, double z, double v)
      : rows_(std::move(rows)), design_(design), columns_(columns), z_(z), v_(v), t2_x_(columns, 0), t3_x_(columns, 0) {
    for (std::size_t j = 0; j < rows_.size(); ++j) {
      const Nb2Row& row = rows_[j];
      value_ += row.value;
      t2_ += row.t2;
      t3_ += row.t3;
      s_t1_ += row.s_t1;
      s_t2_ += row.s_t2;
      const double* x = design_ + j * columns_;
      for (std::size_t c = 0; c < columns_; ++c) {
        t2_x_[c] += row.t2 * x[c];
        t3_x_[c] += row.t3 * x[c];
      }
    }
    whole_ = 1 - v_ * t2_;
    gamma_ = v_ / whole_;
    n_q_ = -gamma_ / 2;
    n_qq_ = gamma_ * gamma_ / 2;
    lambda_ = -gamma_ * n_q_ * t3_;
  }

  // The rows themselves: all there is without an effect.
  void add_rows(ObjectiveValue& out) {
    const std::size_t at_size = columns_;
    mixed_x_.assign(columns_, 0);
    out.log_likelihood += value_;
    for (std::size_t j = 0; j < rows_.size(); ++j) {
      const Nb2Row& row = rows_[j];
      const double slope = row.t1 + lambda_ * row.t2 - n_q_ * row.t3;
      const double bend = row.t2 + lambda_ * row.t3 - n_q_ * row.t4;
      const double with_size = row.s_t1 + lambda_ * row.s_t2 - n_q_ * row.s_t3;
      mixed_ += bend;
      mixed_size_ += with_size;
      out.gradient[at_size] += row.s + lambda_ * row.s_t1 - n_q_ * row.s_t2;
      out.bend(at_size, at_size) += row.ss + lambda_ * row.ss_t1 - n_q_ * row.ss_t2;
      const double* x = design_ + j * columns_;
      for (std::size_t c = 0; c < columns_; ++c) {
        out.gradient[c] += slope * x[c];
        mixed_x_[c] += bend * x[c];
        out.bend(at_size, c) += with_size * x[c];
        const double weighted = bend * x[c];
        double* line = &out.bend(c, 0);
        for (std::size_t d = 0; d <= c; ++d) line[d] += weighted * x[d];
      }
    }
  }

  // How the mode moves, and what that adds. REQUIRES: add_rows().
  void add_effect(ObjectiveValue& out) {
    const std::size_t at_size = columns_;
    const std::size_t at_deviation = columns_ + 1;
    const double m_zz = mixed_ - 1 / v_ + n_qq_ * t3_ * t3_;
    const double m_z_size = mixed_size_ + n_qq_ * s_t2_ * t3_;
    const double n_q_tau = -v_ / (whole_ * whole_);
    const double m_z_tau = 2 * z_ / v_ + 2 * lambda_ / v_ - n_q_tau * t3_;
    const double move_size = gamma_ * s_t1_;
    const double move_tau = 2 * z_ / whole_;
    for (std::size_t c = 0; c < columns_; ++c) mixed_x_[c] += n_qq_ * t3_ * t3_x_[c];
    for (std::size_t c = 0; c < columns_; ++c) {
      const double move = gamma_ * t2_x_[c];
      for (std::size_t d = 0; d <= c; ++d) {
        const double other = gamma_ * t2_x_[d];
        out.bend(c, d) += n_qq_ * t3_x_[c] * t3_x_[d] + mixed_x_[c] * other + move * mixed_x_[d] + m_zz * move * other;
      }
      out.bend(at_size, c) +=
          n_qq_ * s_t2_ * t3_x_[c] + mixed_x_[c] * move_size + move * m_z_size + m_zz * move * move_size;
      out.bend(at_deviation, c) +=
          -n_q_tau * t3_x_[c] + mixed_x_[c] * move_tau + move * m_z_tau + m_zz * move * move_tau;
    }
    out.bend(at_size, at_size) += n_qq_ * s_t2_ * s_t2_ + 2 * m_z_size * move_size + m_zz * move_size * move_size;
    out.bend(at_deviation, at_size) +=
        -n_q_tau * s_t2_ + m_z_size * move_tau + move_size * m_z_tau + m_zz * move_size * move_tau;
    out.log_likelihood -= z_ * z_ / (2 * v_) + std::log(whole_) / 2;
    out.gradient[at_deviation] += z_ * z_ / v_ + 2 * lambda_ * z_ / v_ + v_ * t2_ / whole_;
    out.bend(at_deviation, at_deviation) += -2 * z_ * z_ / v_ - 4 * lambda_ * z_ / v_ +
                                            2 * v_ * t2_ / (whole_ * whole_) + 2 * m_z_tau * move_tau +
                                            m_zz * move_tau * move_tau;
  }

 private:
  std::vector<Nb2Row> rows_;
  const double* design_;
  std::size_t columns_;
  double z_;
  double v_;
  double value_ = 0;
  double t2_ = 0;
  double t3_ = 0;
  double s_t1_ = 0;
  double s_t2_ = 0;
  std::vector<double> t2_x_;  // by column
  std::vector<double> t3_x_;
  double whole_ = 1;
  double gamma_ = 0;
  double n_q_ = 0;
  double n_qq_ = 0;
  double lambda_ = 0;
  double mixed_ = 0;             // second derivatives of the rows in the effect twice,
  double mixed_size_ = 0;        // in the effect and the size,
  std::vector<double> mixed_x_;  // in the effect and a coefficient
};

}  // namespace

Nb2Objective::Nb2Objective(const Frame& frame) : frame_(frame) {
  for (const double events : frame.events) factorials_ += std::lgamma(events + 1);
}

void Nb2Objective::means_by_size(std::size_t squad, const std::vector<double>& coefficients, double log_size,
                                 std::vector<double>& out) const {
  out.clear();
  const std::size_t columns = frame_.columns();
  for (std::size_t row = first_row(squad); row < frame_.squad_ends[squad]; ++row) {
    const double* x = frame_.design.data() + row * columns;
    double log_mean = frame_.log_hours[row] - log_size;
    for (std::size_t c = 0; c < columns; ++c) log_mean += x[c] * coefficients[c];
    out.push_back(std::exp(log_mean));
  }
}

// Where the log density of the effect is highest. It is concave: each count's is.
RandomEffect Nb2Objective::mode_of(std::size_t squad, const std::vector<double>& means_by_size, double size,
                                   double variance) const {
  const double* events = frame_.events.data() + first_row(squad);
  double z = 0;
  double bend = 1 / variance;
  for (int step = 0; step < 200; ++step) {
    const double factor = std::exp(z);
    double slope = -z / variance;
    bend = 1 / variance;
    for (std::size_t j = 0; j < means_by_size.size(); ++j) {
      const double by_size = means_by_size[j] * factor;
      const double p = by_size / (1 + by_size);
      slope += events[j] - (events[j] + size) * p;
      bend += (events[j] + size) * p / (1 + by_size);
    }
    const double move = slope / bend;
    z += std::clamp(move, -1.0, 1.0);
    if (std::abs(move) <= 8 * std::numeric_limits<double>::epsilon() * std::max(1.0, std::abs(z))) break;
  }
  return {z, 1 / bend};
}

ObjectiveValue Nb2Objective::at(const std::vector<double>& coefficients, double log_size,
                                std::optional<double> log_deviation) const {
  const std::size_t columns = frame_.columns();
  const double size = std::exp(log_size);
  const double variance = log_deviation ? std::exp(2 * *log_deviation) : 0;
  ObjectiveValue out(columns + (log_deviation ? 2 : 1));
  out.log_likelihood = -factorials_;
  std::vector<double> by_size;
  for (std::size_t squad = 0; squad < frame_.squads(); ++squad) {
    means_by_size(squad, coefficients, log_size, by_size);
    const double mode = log_deviation ? mode_of(squad, by_size, size, variance).mode : 0;
    const double factor = std::exp(mode);
    const std::size_t first = first_row(squad);
    std::vector<Nb2Row> rows;
    rows.reserve(by_size.size());
    for (std::size_t j = 0; j < by_size.size(); ++j)
      rows.push_back(nb2_row(frame_.events[first + j], by_size[j] * factor, size));
    SquadSum sum(std::move(rows), frame_.design.data() + first * columns, columns, mode, variance);
    sum.add_rows(out);
    if (log_deviation) sum.add_effect(out);
  }
  out.mirror();
  return out;
}

std::vector<RandomEffect> Nb2Objective::effects(const std::vector<double>& coefficients, double log_size,
                                                double log_deviation) const {
  std::vector<RandomEffect> out;
  std::vector<double> by_size;
  for (std::size_t squad = 0; squad < frame_.squads(); ++squad) {
    means_by_size(squad, coefficients, log_size, by_size);
    out.push_back(mode_of(squad, by_size, std::exp(log_size), std::exp(2 * log_deviation)));
  }
  return out;
}

double Nb2Objective::slope_at_no_effect(const std::vector<double>& coefficients, double log_size) const {
  const double size = std::exp(log_size);
  std::vector<double> by_size;
  double sum = 0;
  for (std::size_t squad = 0; squad < frame_.squads(); ++squad) {
    means_by_size(squad, coefficients, log_size, by_size);
    double slope = 0;
    double bend = 0;
    for (std::size_t j = 0; j < by_size.size(); ++j) {
      const Nb2Row row = nb2_row(frame_.events[first_row(squad) + j], by_size[j], size);
      slope += row.t1;
      bend += row.t2;
    }
    sum += (slope * slope + bend) / 2;
  }
  return sum;
}

}  // namespace lanework::evidence
