#include "core/evidence/mixed/club_term.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "core/evidence/mixed/squad_mode.h"

namespace lanework::evidence {
namespace {

using SquadJet = Jet<2>;
constexpr std::size_t kT = 0;    // the logarithm of expected events, the club's effect in it
constexpr std::size_t kTau = 1;  // the logarithm of the squads' deviation

// A squad at a club's effect, its own effect at its mode.
struct AtMode {
  SquadJet height;    // of the log density, without the club's share of the events
  SquadJet mean;      // events expected
  SquadJet curved;    // 1 + variance x mean
  SquadJet narrowed;  // mean / curved: how the mean moves with the club's effect
  double mode = 0;
};

AtMode at_mode(const ClubSquad& squad, double club_effect, double log_squad_deviation) {
  const SquadJet expected(squad.log_expected + club_effect, kT);
  const SquadJet variance = exp(SquadJet(log_squad_deviation, kTau) * 2);
  const SquadJet mode = squad_mode(squad.events, expected, variance);
  AtMode out;
  out.mean = exp(expected + mode);
  out.curved = variance * out.mean + 1;
  out.narrowed = out.mean / out.curved;
  out.height = mode * squad.events - out.mean - mode * mode / (variance * 2);
  out.mode = mode.value;
  return out;
}

double club_mode_of(std::span<const ClubSquad> squads, double log_squad_deviation, double club_variance) {
  const double variance = std::exp(2 * log_squad_deviation);
  double effect = 0;
  for (int step = 0; step < 200; ++step) {
    double slope = -effect / club_variance;
    double bend = 1 / club_variance;
    for (const ClubSquad& squad : squads) {
      const double expected = squad.log_expected + effect;
      const double mean = std::exp(expected + squad_mode(squad.events, expected, variance));
      slope += squad.events - mean;
      bend += mean / (1 + variance * mean);
    }
    const double move = slope / bend;
    effect += std::clamp(move, -1.0, 1.0);
    if (std::abs(move) <= 4 * std::numeric_limits<double>::epsilon() * std::max(1.0, std::abs(effect))) break;
  }
  return effect;
}

// The sums over the squads that couple them, and the term made from them. Names: m is the height of the log density
// plus lambda times the condition that it is level in the club's effect, plus what the curvatures take off; c the
// club's effect, r how the means move with it, n minus half the logarithm of 1 + w r.
class ClubSum {
 public:
  ClubSum(std::span<const ClubSquad> squads, double log_squad_deviation, double log_club_deviation)
      : w_(std::exp(2 * log_club_deviation)), c_(club_mode_of(squads, log_squad_deviation, w_)) {
    out_.log_likelihood = -c_ * c_ / (2 * w_);
    for (const ClubSquad& squad : squads) look_at(squad, log_squad_deviation);
    whole_ = 1 + w_ * r_;
    out_.log_likelihood -= std::log(whole_) / 2;
    const double gamma = w_ / whole_;
    out_.club_mode = c_;
    out_.club_variance = gamma;
    n_r_ = -gamma / 2;
    out_.rank_weight = gamma * gamma / 2;
    lambda_ = gamma * (-log_curved_t_ / 2 + n_r_ * r_t_);
  }

  ClubTerm term() {
    add_squads();
    add_deviations();
    return std::move(out_);
  }

 private:
  double w_;  // the clubs' variance
  double c_;
  std::vector<AtMode> at_;
  double r_ = 0;
  double r_t_ = 0;
  double r_tau_ = 0;
  double mean_tau_ = 0;
  double log_curved_t_ = 0;
  double whole_ = 1;
  double n_r_ = 0;
  double lambda_ = 0;
  double m_tau_ = 0;
  double m_tau_tau_ = 0;
  double m_c_tau_ = 0;
  std::vector<double> with_tau_;  // by squad
  ClubTerm out_;

  void look_at(const ClubSquad& squad, double log_squad_deviation) {
    at_.push_back(at_mode(squad, c_, log_squad_deviation));
    const AtMode& own = at_.back();
    out_.squad_modes.push_back(own.mode);
    out_.log_likelihood += own.height.value + squad.events * c_ - std::log(own.curved.value) / 2;
    r_ += own.narrowed.value;
    r_t_ += own.narrowed.first[kT];
    r_tau_ += own.narrowed.first[kTau];
    mean_tau_ += own.mean.first[kTau];
    log_curved_t_ += own.curved.first[kT] / own.curved.value;
  }

  void add_squads() {
    const double n_rr = out_.rank_weight;
    m_tau_tau_ = n_rr * r_tau_ * r_tau_;
    m_c_tau_ = n_rr * r_t_ * r_tau_;
    out_.bend = n_rr * r_t_ * r_t_ - 1 / w_;
    for (const AtMode& own : at_) {
      // n_r is held; how it moves stands in the ranks.
      const SquadJet sum = own.height - own.mean * lambda_ - log(own.curved) * 0.5 + own.narrowed * n_r_;
      const double bend = sum.second[SquadJet::at(kT, kT)];
      const double rank = own.narrowed.first[kT];
      out_.slope.push_back(sum.first[kT]);
      out_.own.push_back(bend);
      out_.rank.push_back(rank);
      out_.beside.push_back(bend + n_rr * rank * r_t_);
      out_.move.push_back(-w_ / whole_ * own.narrowed.value);
      with_tau_.push_back(sum.second[SquadJet::at(kT, kTau)] + n_rr * rank * r_tau_);
      m_tau_ += sum.first[kTau];
      m_tau_tau_ += sum.second[SquadJet::at(kTau, kTau)];
      m_c_tau_ += sum.second[SquadJet::at(kT, kTau)];
      out_.bend += bend;
    }
  }

  void add_deviations() {
    const double move_tau = -w_ / whole_ * mean_tau_;
    const double move_kappa = 2 * c_ / whole_;
    const double n_r_kappa = -w_ / (whole_ * whole_);
    const double m_c_kappa = 2 * c_ / w_ + 2 * lambda_ / w_ + n_r_kappa * r_t_;
    const double m_kappa_kappa = -2 * c_ * c_ / w_ - 4 * lambda_ * c_ / w_ - 2 * w_ * r_ / (whole_ * whole_);
    out_.by_deviation = {m_tau_, c_ * c_ / w_ + 2 * lambda_ * c_ / w_ - w_ * r_ / whole_};
    out_.by_deviations = {
        m_tau_tau_ + 2 * m_c_tau_ * move_tau + out_.bend * move_tau * move_tau,
        n_r_kappa * r_tau_ + m_c_tau_ * move_kappa + move_tau * m_c_kappa + out_.bend * move_tau * move_kappa,
        m_kappa_kappa + 2 * m_c_kappa * move_kappa + out_.bend * move_kappa * move_kappa,
    };
    for (std::size_t i = 0; i < at_.size(); ++i) {
      const double move = out_.move[i];
      out_.by_both[kSquads].push_back(with_tau_[i] + out_.beside[i] * move_tau + move * m_c_tau_ +
                                      out_.bend * move * move_tau);
      out_.by_both[kClubs].push_back(n_r_kappa * out_.rank[i] + out_.beside[i] * move_kappa + move * m_c_kappa +
                                     out_.bend * move * move_kappa);
    }
  }
};

}  // namespace

ClubTerm club_term(std::span<const ClubSquad> squads, double log_squad_deviation, double log_club_deviation) {
  return ClubSum(squads, log_squad_deviation, log_club_deviation).term();
}

}  // namespace lanework::evidence
