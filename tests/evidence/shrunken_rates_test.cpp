#include "core/evidence/shrunken_rates.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <vector>

namespace lanework::evidence {
namespace {

// With very many squads nothing about the gamma is left to guess: the limits are the plug-in ones.
TEST(ShrunkenRates, WithManySquadsAsThoughTheGammaWereKnown) {
  std::vector<SquadCount> squads;
  for (int i = 0; i < 3000; ++i) squads.push_back({(i * 7) % 13, 2.0 + i % 5});
  const std::vector<Shrunken> plugged_in = shrink(squads, fit_gamma_prior(squads), 0.95);
  const std::vector<Shrunken> found = shrunken_rates(squads, 0.95);
  for (const std::size_t i : {std::size_t{0}, std::size_t{5}, std::size_t{11}, std::size_t{100}}) {
    EXPECT_NEAR(found[i].estimate / plugged_in[i].estimate, 1, 0.02) << i;
    EXPECT_NEAR(found[i].limits.high / plugged_in[i].limits.high, 1, 0.02) << i;
    EXPECT_NEAR(found[i].limits.low / plugged_in[i].limits.low, 1, 0.05) << i;
  }
}

// Squads that differ no more than by chance are drawn in far, but not to a point.
TEST(ShrunkenRates, NoSpreadSeenIsNotNoSpread) {
  const std::vector<SquadCount> squads = {{4, 1000}, {4, 1000}, {4, 1000}, {5, 1000}};
  EXPECT_EQ(fit_gamma_prior(squads).spread, 0);
  for (const Shrunken& one : shrunken_rates(squads, 0.95)) EXPECT_GT(one.limits.high, 1.3 * one.limits.low);
}

RC_GTEST_PROP(ShrunkenRates, LieBetweenTheirLimitsAndFollowTheirCounts, ()) {
  const auto counts = *rc::gen::suchThat(rc::gen::container<std::vector<int>>(6, rc::gen::inRange(0, 15)),
                                         [](const std::vector<int>& all) {
                                           int sum = 0;
                                           for (const int one : all) sum += one;
                                           return sum > 0;
                                         });
  std::vector<SquadCount> squads;
  for (const int count : counts) squads.push_back({count, 1500});
  const std::vector<Shrunken> found = shrunken_rates(squads, 0.9);
  for (std::size_t i = 0; i < found.size(); ++i) {
    RC_ASSERT(found[i].limits.low < found[i].estimate && found[i].estimate < found[i].limits.high);
    RC_ASSERT(found[i].weight_of_own > 0 && found[i].weight_of_own < 1);
    for (std::size_t j = 0; j < found.size(); ++j)
      RC_ASSERT(counts[i] <= counts[j] || found[i].estimate > found[j].estimate);
  }
}

}  // namespace
}  // namespace lanework::evidence
