#include "core/evidence/mixed/club_term.h"

#include <algorithm>
#include <cmath>
#include <limits>

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

}  // namespace

ClubTerm club_term(std::span<const ClubSquad> squads, double log_squad_deviation, double log_club_deviation) {
  const double w = std::exp(2 * log_club_deviation);
  const double c = club_mode_of(squads, log_squad_deviation, w);
  std::vector<AtMode> at;
  double narrowed = 0;      // R
  double narrowed_t = 0;    // its slope in the club's effect
  double narrowed_tau = 0;  // and in the squads' deviation
  double mean_tau = 0;
  ClubTerm out;
  out.log_likelihood = -c * c / (2 * w);
  double log_curved_t = 0;
  for (const ClubSquad& squad : squads) {
    at.push_back(at_mode(squad, c, log_squad_deviation));
    const AtMode& own = at.back();
    out.squad_modes.push_back(own.mode);
    out.log_likelihood += own.height.value + squad.events * c - std::log(own.curved.value) / 2;
    narrowed += own.narrowed.value;
    narrowed_t += own.narrowed.first[kT];
    narrowed_tau += own.narrowed.first[kTau];
    mean_tau += own.mean.first[kTau];
    log_curved_t += own.curved.first[kT] / own.curved.value;
  }
  const double whole = 1 + w * narrowed;
  out.log_likelihood -= std::log(whole) / 2;
  out.club_mode = c;
  out.club_variance = w / whole;
  // Of -log(1 + w R) / 2, by R and by the clubs' deviation.
  const double gamma = w / whole;
  const double n_r = -gamma / 2;
  const double n_rr = gamma * gamma / 2;
  const double n_r_kappa = -w / (whole * whole);
  // The club's mode is where the height is level; what is left of the slope there is carried by lambda times that
  // condition, so that every total derivative is one of a sum over the squads.
  const double lambda = gamma * (-log_curved_t / 2 + n_r * narrowed_t);
  out.rank_weight = n_rr;
  const double move_tau = -gamma * mean_tau;
  const double move_kappa = 2 * c / whole;
  double m_tau = 0;
  double m_tau_tau = n_rr * narrowed_tau * narrowed_tau;
  double m_c_tau = n_rr * narrowed_t * narrowed_tau;
  double m_c_c = n_rr * narrowed_t * narrowed_t - 1 / w;
  const double m_c_kappa = 2 * c / w + 2 * lambda / w + n_r_kappa * narrowed_t;
  std::vector<double> with_tau;
  for (const AtMode& own : at) {
    const SquadJet sum = own.height - own.mean * lambda - log(own.curved) * 0.5 + own.narrowed * n_r;
    // n_r is held; how it moves stands in the ranks.
    out.slope.push_back(sum.first[kT]);
    const double own_bend = sum.second[SquadJet::at(kT, kT)];
    const double rank = own.narrowed.first[kT];
    out.own.push_back(own_bend);
    out.rank.push_back(rank);
    out.beside.push_back(own_bend + n_rr * rank * narrowed_t);
    out.move.push_back(-gamma * own.narrowed.value);
    with_tau.push_back(sum.second[SquadJet::at(kT, kTau)] + n_rr * rank * narrowed_tau);
    m_tau += sum.first[kTau];
    m_tau_tau += sum.second[SquadJet::at(kTau, kTau)];
    m_c_tau += sum.second[SquadJet::at(kT, kTau)];
    m_c_c += own_bend;
  }
  out.bend = m_c_c;
  out.by_deviation = {m_tau, c * c / w + 2 * lambda * c / w - w * narrowed / whole};
  const double m_kappa_kappa = -2 * c * c / w - 4 * lambda * c / w - 2 * w * narrowed / (whole * whole);
  const double m_tau_kappa = n_r_kappa * narrowed_tau;
  out.by_deviations = {
      m_tau_tau + 2 * m_c_tau * move_tau + m_c_c * move_tau * move_tau,
      m_tau_kappa + m_c_tau * move_kappa + move_tau * m_c_kappa + m_c_c * move_tau * move_kappa,
      m_kappa_kappa + 2 * m_c_kappa * move_kappa + m_c_c * move_kappa * move_kappa,
  };
  for (std::size_t i = 0; i < at.size(); ++i) {
    out.by_both[kSquads].push_back(with_tau[i] + out.beside[i] * move_tau + out.move[i] * m_c_tau +
                                   m_c_c * out.move[i] * move_tau);
    out.by_both[kClubs].push_back(n_r_kappa * out.rank[i] + out.beside[i] * move_kappa + out.move[i] * m_c_kappa +
                                  m_c_c * out.move[i] * move_kappa);
  }
  return out;
}

}  // namespace lanework::evidence
