#include "benchmarks/evidence/simulated_union.h"

#include <boost/random/gamma_distribution.hpp>
#include <boost/random/normal_distribution.hpp>
#include <boost/random/poisson_distribution.hpp>
#include <cmath>
#include <cstdio>

#include "core/evidence/mixed/natural_spline.h"
#include "core/evidence/random_engine.h"

namespace lanework::bench {
namespace {

constexpr double kSize = 1.5;

double poisson(double mean, evidence::RandomEngine& engine) {
  return static_cast<double>(boost::random::poisson_distribution<int, double>(mean)(engine));
}

}  // namespace

SimulatedUnion simulate_union(std::size_t clubs, std::size_t squads_a_club, std::size_t weeks) {
  evidence::RandomEngine engine(20261126, 9, 0, 0);
  boost::random::normal_distribution<double> club_effect(0, 0.3);
  boost::random::normal_distribution<double> squad_effect(0, 0.4);
  boost::random::gamma_distribution<double> uneven(kSize, 1 / kSize);
  std::vector<double> all_weeks;
  for (std::size_t week = 1; week <= weeks; ++week) all_weeks.push_back(static_cast<double>(week));
  const evidence::NaturalSpline curve(all_weeks, 4);
  SimulatedUnion out;
  out.frame.names = {"intercept", "adh", "U13", "U15", "U19", "girls", "match_share", "s1", "s2", "s3", "s4"};
  for (std::size_t club = 0; club < clubs; ++club) {
    const double of_club = club_effect(engine);
    for (std::size_t squad = 0; squad < squads_a_club; ++squad) {
      const double effect = of_club + squad_effect(engine);
      const std::size_t age = squad % 4;
      const double girls = squad / 4 % 2 == 0 ? 1 : 0;
      for (std::size_t week = 0; week < weeks; ++week) {
        const double warm_ups = std::floor(4 * uniform_from(engine()));
        const double match_share = 0.1 + 0.3 * uniform_from(engine());
        const double hours = 30 + 50 * uniform_from(engine());
        std::vector<double> row = {1,     warm_ups,   age == 1 ? 1.0 : 0.0, age == 2 ? 1.0 : 0.0, age == 3 ? 1.0 : 0.0,
                                   girls, match_share};
        row.resize(11);
        curve.row(all_weeks[week], row.data() + 7);
        const double mean = hours * std::exp(-5.6 - 0.2 * warm_ups + 0.3 * row[3] + 0.8 * match_share + effect);
        out.frame.design.insert(out.frame.design.end(), row.begin(), row.end());
        out.frame.log_hours.push_back(std::log(hours));
        out.frame.events.push_back(poisson(mean, engine));
        out.uneven_events.push_back(poisson(mean * uneven(engine), engine));
      }
      out.frame.squad_ends.push_back(out.frame.rows());
    }
    out.frame.club_ends.push_back(out.frame.squads());
  }
  return out;
}

std::string to_csv(const SimulatedUnion& made) {
  const evidence::Frame& frame = made.frame;
  std::string out = "y,ynb,hours,club,squad";
  for (std::size_t c = 1; c < frame.columns(); ++c) out += ",c" + std::to_string(c);
  out += "\n";
  std::size_t squad = 0;
  std::size_t club = 0;
  char cell[40];
  for (std::size_t row = 0; row < frame.rows(); ++row) {
    if (row == frame.squad_ends[squad]) ++squad;
    if (squad == frame.club_ends[club]) ++club;
    std::snprintf(cell, sizeof cell, "%.0f,%.0f,%.17g", frame.events[row], made.uneven_events[row],
                  std::exp(frame.log_hours[row]));
    out += cell;
    out += "," + std::to_string(club) + "," + std::to_string(squad);
    for (std::size_t c = 1; c < frame.columns(); ++c) {
      std::snprintf(cell, sizeof cell, ",%.17g", frame.design[row * frame.columns() + c]);
      out += cell;
    }
    out += "\n";
  }
  return out;
}

}  // namespace lanework::bench
