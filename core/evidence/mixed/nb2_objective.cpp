#include "core/evidence/mixed/nb2_objective.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/evidence/mixed/nb2_row.h"

namespace lanework::evidence {
namespace {

// Sums over a squad's rows at the mode of its effect; by column where it says so. Names as in the row.
struct SquadRows {
  double value = 0;
  double t2 = 0;
  double t3 = 0;
  double s_t1 = 0;
  double s_t2 = 0;
  std::vector<double> t2_x;
  std::vector<double> t3_x;
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
double Nb2Objective::mode_of(std::size_t squad, const std::vector<double>& means_by_size, double size,
                             double variance) const {
  const double* events = frame_.events.data() + first_row(squad);
  double z = 0;
  for (int step = 0; step < 200; ++step) {
    const double factor = std::exp(z);
    double slope = -z / variance;
    double bend = 1 / variance;
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
  return z;
}

ObjectiveValue Nb2Objective::at(const std::vector<double>& coefficients, double log_size,
                                std::optional<double> log_deviation) const {
  const std::size_t columns = frame_.columns();
  const std::size_t at_size = columns;
  const std::size_t at_deviation = columns + 1;
  const double size = std::exp(log_size);
  const double v = log_deviation ? std::exp(2 * *log_deviation) : 0;
  ObjectiveValue out(columns + (log_deviation ? 2 : 1));
  out.log_likelihood = -factorials_;
  std::vector<double> by_size;
  std::vector<Nb2Row> rows;
  std::vector<double> mixed_x(columns);  // of second derivatives in the effect, by column
  std::vector<double> move(columns);
  for (std::size_t squad = 0; squad < frame_.squads(); ++squad) {
    means_by_size(squad, coefficients, log_size, by_size);
    const double z = log_deviation ? mode_of(squad, by_size, size, v) : 0;
    const double factor = std::exp(z);
    const std::size_t first = first_row(squad);
    SquadRows sums;
    sums.t2_x.assign(columns, 0);
    sums.t3_x.assign(columns, 0);
    rows.clear();
    for (std::size_t j = 0; j < by_size.size(); ++j) {
      rows.push_back(nb2_row(frame_.events[first + j], by_size[j] * factor, size));
      const Nb2Row& row = rows.back();
      sums.value += row.value;
      sums.t2 += row.t2;
      sums.t3 += row.t3;
      sums.s_t1 += row.s_t1;
      sums.s_t2 += row.s_t2;
      const double* x = frame_.design.data() + (first + j) * columns;
      for (std::size_t c = 0; c < columns; ++c) {
        sums.t2_x[c] += row.t2 * x[c];
        sums.t3_x[c] += row.t3 * x[c];
      }
    }
    // q: the curvature of the counts; n: minus half the logarithm of 1 + v q; lambda: see club_term.cpp.
    const double whole = 1 - v * sums.t2;
    const double gamma = v / whole;
    const double n_q = -gamma / 2;
    const double n_qq = gamma * gamma / 2;
    const double q_z = -sums.t3;
    const double q_s = -sums.s_t2;
    const double lambda = gamma * n_q * q_z;
    double mixed = 0;       // in the effect twice
    double mixed_size = 0;  // in the effect and the size
    std::fill(mixed_x.begin(), mixed_x.end(), 0);
    for (std::size_t j = 0; j < rows.size(); ++j) {
      const Nb2Row& row = rows[j];
      const double slope = row.t1 + lambda * row.t2 - n_q * row.t3;
      const double bend = row.t2 + lambda * row.t3 - n_q * row.t4;
      const double with_size = row.s_t1 + lambda * row.s_t2 - n_q * row.s_t3;
      mixed += bend;
      mixed_size += with_size;
      out.gradient[at_size] += row.s + lambda * row.s_t1 - n_q * row.s_t2;
      out.bend(at_size, at_size) += row.ss + lambda * row.ss_t1 - n_q * row.ss_t2;
      const double* x = frame_.design.data() + (first + j) * columns;
      for (std::size_t c = 0; c < columns; ++c) {
        out.gradient[c] += slope * x[c];
        mixed_x[c] += bend * x[c];
        out.bend(at_size, c) += with_size * x[c];
        const double weighted = bend * x[c];
        double* line = &out.bend(c, 0);
        for (std::size_t d = 0; d <= c; ++d) line[d] += weighted * x[d];
      }
    }
    out.log_likelihood += sums.value;
    if (!log_deviation) continue;
    out.log_likelihood -= z * z / (2 * v) + std::log(whole) / 2;
    // How the mode moves, and what that adds.
    const double m_zz = mixed - 1 / v + n_qq * q_z * q_z;
    const double m_z_size = mixed_size + n_qq * q_s * q_z;
    const double n_q_tau = -v / (whole * whole);
    const double m_z_tau = 2 * z / v + 2 * lambda / v + n_q_tau * q_z;
    const double move_size = gamma * sums.s_t1;
    const double move_tau = 2 * z / whole;
    for (std::size_t c = 0; c < columns; ++c) {
      mixed_x[c] -= n_qq * q_z * sums.t3_x[c];
      move[c] = gamma * sums.t2_x[c];
    }
    for (std::size_t c = 0; c < columns; ++c) {
      for (std::size_t d = 0; d <= c; ++d) {
        out.bend(c, d) +=
            n_qq * sums.t3_x[c] * sums.t3_x[d] + mixed_x[c] * move[d] + move[c] * mixed_x[d] + m_zz * move[c] * move[d];
      }
      out.bend(at_size, c) +=
          -n_qq * q_s * sums.t3_x[c] + mixed_x[c] * move_size + move[c] * m_z_size + m_zz * move[c] * move_size;
      out.bend(at_deviation, c) +=
          -n_q_tau * sums.t3_x[c] + mixed_x[c] * move_tau + move[c] * m_z_tau + m_zz * move[c] * move_tau;
    }
    out.bend(at_size, at_size) += n_qq * q_s * q_s + 2 * m_z_size * move_size + m_zz * move_size * move_size;
    out.bend(at_deviation, at_size) +=
        n_q_tau * q_s + m_z_size * move_tau + move_size * m_z_tau + m_zz * move_size * move_tau;
    out.gradient[at_deviation] += z * z / v + 2 * lambda * z / v + v * sums.t2 / whole;
    out.bend(at_deviation, at_deviation) += -2 * z * z / v - 4 * lambda * z / v + 2 * v * sums.t2 / (whole * whole) +
                                            2 * m_z_tau * move_tau + m_zz * move_tau * move_tau;
  }
  out.mirror();
  return out;
}

std::vector<double> Nb2Objective::effects(const std::vector<double>& coefficients, double log_size,
                                          double log_deviation) const {
  std::vector<double> out;
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
