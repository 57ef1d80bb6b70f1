#include "core/evidence/mixed/club_term.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace lanework::evidence {
namespace {

using Eigen::ArrayXd;
using Numbers = Eigen::Ref<const ArrayXd>;

// A step of Newton's this short leaves an error of its square.
constexpr double kNear = 1e-8;

struct Modes {
  ArrayXd squads;
  double club = 0;
};

// All effects of the club at once; the density is log-concave. The squads hang together by the club's effect alone, so
// that its step is found first.
Modes modes_of(const Numbers& events, const Numbers& expected, double squad_variance, double club_variance) {
  Modes out{ArrayXd::Zero(events.size()), 0};
  for (int step = 0; step < 200; ++step) {
    const ArrayXd mean = expected * (out.squads + out.club).exp();
    const ArrayXd off = events - mean;
    const ArrayXd curved = 1 + squad_variance * mean;
    const ArrayXd alone = (squad_variance * off - out.squads) / curved;
    const double club_slope = off.sum() - out.club / club_variance - (mean * alone).sum();
    double club_step = club_slope / (1 / club_variance + (mean / curved).sum());
    ArrayXd squad_steps = alone - squad_variance * mean / curved * club_step;
    // Held short where the exponential would run away.
    const double longest = std::max(std::abs(club_step), squad_steps.abs().maxCoeff());
    if (longest > 1) {
      club_step /= longest;
      squad_steps /= longest;
    }
    out.club += club_step;
    out.squads += squad_steps;
    if (longest <= kNear) break;
  }
  return out;
}

// The sums over the squads that couple them, and the term made from them. Names: t the logarithm of a squad's expected
// events, the club's effect in it; tau that of the squads' deviation, kappa of the clubs'. m is the height of the log
// density plus lambda times the condition that it is level in the club's effect, plus what the curvatures take off; c
// the club's effect, r how the means move with it, n minus half the logarithm of 1 + w r. Of a squad: u its mean times
// the squads' variance, a letter after r or mean what it was derived by.
class ClubSum {
 public:
  ClubSum(const Numbers& events, const Numbers& expected, double log_squad_deviation, double log_club_deviation)
      : v_(std::exp(2 * log_squad_deviation)), w_(std::exp(2 * log_club_deviation)) {
    Modes modes = modes_of(events, expected, v_, w_);
    c_ = modes.club;
    z_ = std::move(modes.squads);
    mean_ = expected * (z_ + c_).exp();
    u_ = v_ * mean_;
    inverse_ = 1 / (1 + u_);
    share_ = u_ * inverse_;
    drawn_ = z_ * inverse_;
    s_ = 1 + drawn_;
    r_ = mean_ * inverse_;
    r_t_ = r_ * inverse_.square();
    r_tau_ = 2 * r_t_ * (z_ - u_ / inverse_);
    sum_r_t_ = r_t_.sum();
    sum_r_tau_ = r_tau_.sum();
    whole_ = 1 + w_ * r_.sum();
    gamma_ = w_ / whole_;
    n_r_ = -gamma_ / 2;
    lambda_ = gamma_ * (-(share_ * inverse_).sum() / 2 + n_r_ * sum_r_t_);
    out_.rank_weight = gamma_ * gamma_ / 2;
    out_.log_likelihood = -c_ * c_ / (2 * w_) - std::log(whole_) / 2 +
                          (events * (z_ + c_) - mean_ - z_.square() / (2 * v_) + inverse_.log() / 2).sum();
  }

  ClubTerm term() {
    add_squads();
    add_deviations();
    out_.club_mode = c_;
    out_.club_variance = gamma_;
    out_.squad_variances = v_ * inverse_ + share_.square() * gamma_;
    out_.squad_modes = std::move(z_);
    return std::move(out_);
  }

 private:
  double v_;  // the squads' variance
  double w_;  // the clubs'
  double c_ = 0;
  ArrayXd z_;  // the squads' effects
  ArrayXd mean_;
  ArrayXd u_;
  ArrayXd inverse_;  // of 1 + u
  ArrayXd share_;    // u / (1 + u)
  ArrayXd drawn_;    // z / (1 + u)
  ArrayXd s_;        // 1 + drawn
  ArrayXd r_;
  ArrayXd r_t_;
  ArrayXd r_tau_;
  double sum_r_t_ = 0;
  double sum_r_tau_ = 0;
  double whole_ = 1;
  double gamma_ = 0;
  double n_r_ = 0;
  double lambda_ = 0;
  double m_tau_ = 0;
  double m_tau_tau_ = 0;
  double m_c_tau_ = 0;
  ArrayXd with_tau_;
  ClubTerm out_;

  // n_r is held; how it moves stands in the ranks.
  void add_squads() {
    const double n_rr = out_.rank_weight;
    const ArrayXd squared = z_.square() / v_;
    const ArrayXd left = 1 - u_ * s_;
    out_.slope = -mean_ - lambda_ * r_ - share_ * inverse_ / 2 + n_r_ * r_t_;
    out_.own =
        -r_ - lambda_ * r_t_ - share_ * (1 - u_) * inverse_.cube() / 2 + n_r_ * r_t_ * (1 - 2 * u_) * inverse_.square();
    const ArrayXd r_t_tau = 2 * r_t_ * inverse_ * (z_ - 3 * u_ * s_);
    const ArrayXd t_tau =
        -2 * mean_ * drawn_ - lambda_ * r_tau_ - share_ * (1 - u_) * s_ * inverse_.square() + n_r_ * r_t_tau;
    const ArrayXd away = z_ - u_ / inverse_;
    const ArrayXd r_tau_tau =
        2 * r_t_ * (2 * drawn_ * away + 2 * drawn_ - 2 * u_ * s_ * (1 / inverse_ + u_) - 6 * u_ * s_ * away * inverse_);
    const ArrayXd mean_tau_tau = 4 * mean_ * drawn_ * inverse_ * (z_ + left);
    m_tau_ = (squared - 2 * lambda_ * mean_ * drawn_ - share_ * s_ + n_r_ * r_tau_).sum();
    m_tau_tau_ =
        n_rr * sum_r_tau_ * sum_r_tau_ + (2 * squared * (2 * inverse_ - 1) - lambda_ * mean_tau_tau -
                                          2 * share_ * inverse_ * (s_.square() + drawn_ * left) + n_r_ * r_tau_tau)
                                             .sum();
    m_c_tau_ = n_rr * sum_r_t_ * sum_r_tau_ + t_tau.sum();
    out_.bend = n_rr * sum_r_t_ * sum_r_t_ - 1 / w_ + out_.own.sum();
    out_.rank = r_t_;
    out_.beside = out_.own + n_rr * sum_r_t_ * r_t_;
    out_.move = -gamma_ * r_;
    with_tau_ = t_tau + n_rr * sum_r_tau_ * r_t_;
  }

  void add_deviations() {
    const double move_tau = -gamma_ * (2 * mean_ * drawn_).sum();
    const double move_kappa = 2 * c_ / whole_;
    const double n_r_kappa = -w_ / (whole_ * whole_);
    const double sum_r = r_.sum();
    const double m_c_kappa = 2 * c_ / w_ + 2 * lambda_ / w_ + n_r_kappa * sum_r_t_;
    const double m_kappa_kappa = -2 * c_ * c_ / w_ - 4 * lambda_ * c_ / w_ - 2 * w_ * sum_r / (whole_ * whole_);
    out_.by_deviation = {m_tau_, c_ * c_ / w_ + 2 * lambda_ * c_ / w_ - w_ * sum_r / whole_};
    out_.by_deviations = {
        m_tau_tau_ + 2 * m_c_tau_ * move_tau + out_.bend * move_tau * move_tau,
        n_r_kappa * sum_r_tau_ + m_c_tau_ * move_kappa + move_tau * m_c_kappa + out_.bend * move_tau * move_kappa,
        m_kappa_kappa + 2 * m_c_kappa * move_kappa + out_.bend * move_kappa * move_kappa,
    };
    out_.by_both[kSquads] = with_tau_ + out_.beside * move_tau + out_.move * (m_c_tau_ + out_.bend * move_tau);
    out_.by_both[kClubs] =
        n_r_kappa * out_.rank + out_.beside * move_kappa + out_.move * (m_c_kappa + out_.bend * move_kappa);
  }
};

}  // namespace

ClubTerm club_term(const Numbers& events, const Numbers& expected, double log_squad_deviation,
                   double log_club_deviation) {
  return ClubSum(events, expected, log_squad_deviation, log_club_deviation).term();
}

}  // namespace lanework::evidence
