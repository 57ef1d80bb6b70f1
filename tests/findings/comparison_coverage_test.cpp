// How often the limits of a comparison hold the truth, with squads counted as squads: each left out in turn. Clubs of
// 24 squads in four age bands, trainings and matches, squads' true rates 35 % apart, a third fewer in the one arm.
// 2,000 clubs in './test --long', 100 otherwise.
#include <gtest/gtest.h>

#include <boost/random/normal_distribution.hpp>
#include <boost/random/poisson_distribution.hpp>
#include <cmath>
#include <cstdlib>
#include <functional>
#include <string>

#include "core/evidence/random_engine.h"
#include "core/findings/stratified_comparison.h"

namespace lanework::findings {
namespace {

using evidence::Exposed;
using evidence::RandomEngine;

constexpr double kTimes = 2.0 / 3;
constexpr int kSquads = 24;

std::uint32_t clubs_to_play() {
  const char* asked = std::getenv("LANEWORK_SIMULATED_CLUBS");
  return asked != nullptr ? static_cast<std::uint32_t>(std::stoul(asked)) : 100;
}

// The share of a squad's hours that is in the one arm.
using ShareOf = std::function<double(int squad, RandomEngine& engine)>;

ArmCells played(std::uint32_t run, std::uint32_t design, bool within, const ShareOf& share_of) {
  RandomEngine engine(20261126, 8, design, run);
  boost::random::normal_distribution<double> effect(0, 0.35);
  ArmCells cells;
  for (int squad = 0; squad < kSquads; ++squad) {
    const std::string id = "s" + std::to_string(squad);
    const int age = squad % 4;
    const double own = 0.004 * (1 + 0.3 * age) * std::exp(effect(engine));
    const double share = share_of(squad, engine);
    for (const bool match : {false, true}) {
      const double hours = match ? 300 : 1200;
      const double rate = own * (match ? 2.6 : 0.7);
      const auto count = [&](double in_hours, double at) {
        if (in_hours <= 0) return Exposed{0, 0};
        return Exposed{boost::random::poisson_distribution<std::int64_t, double>(in_hours * at)(engine), in_hours};
      };
      const std::string stratum = (within ? id : "age " + std::to_string(age)) + (match ? ", match" : "");
      cells[{id, stratum}] = {count(share * hours, kTimes * rate), count((1 - share) * hours, rate)};
    }
  }
  return cells;
}

struct Held {
  double by_squads = 0;
  double mantel_haenszel = 0;
  double wider = 0;
};

Held held(std::uint32_t design, bool within, const ShareOf& share_of) {
  Held out;
  const auto holds = [](const evidence::Interval& limits) { return limits.low <= kTimes && kTimes <= limits.high; };
  for (std::uint32_t run = 0; run < clubs_to_play(); ++run) {
    const StratifiedComparison found = compare_arms(played(run, design, within, share_of), 0.95);
    out.by_squads += holds(found.ratio_by_squads->limits) ? 1.0 / clubs_to_play() : 0;
    out.mantel_haenszel += holds(found.ratio->limits) ? 1.0 / clubs_to_play() : 0;
    out.wider += holds(found.ratio_limits()) ? 1.0 / clubs_to_play() : 0;
  }
  return out;
}

TEST(ComparisonCoverage, SquadsLeftOutInTurn) {
  const double chance = clubs_to_play() >= 2000 ? 0 : 3 * std::sqrt(0.95 * 0.05 / clubs_to_play());
  std::string note;
  const auto look = [&](const char* name, const Held& found) {
    EXPECT_GE(found.by_squads, 0.93 - chance) << name;
    EXPECT_GE(found.wider, 0.93 - chance) << name;
    char text[160];
    std::snprintf(text, sizeof text, "%s%s: squads left out %.1f %%, Mantel-Haenszel %.1f %%, the wider %.1f %%",
                  note.empty() ? "" : "; ", name, 100 * found.by_squads, 100 * found.mantel_haenszel,
                  100 * found.wider);
    note += text;
  };
  look("squads partly in each arm", held(0, false, [](int, RandomEngine& engine) { return uniform_from(engine()); }));
  look("squads whole in one arm",
       held(1, false, [](int squad, RandomEngine&) { return squad / 4 % 2 == 0 ? 1.0 : 0.0; }));
  look("each against itself", held(2, true, [](int, RandomEngine&) { return 0.5; }));
  RecordProperty("note", note);
}

}  // namespace
}  // namespace lanework::findings
