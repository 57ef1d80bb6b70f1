// Lip cancer in 56 districts of Scotland: Clayton D, Kaldor J 1987, Biometrics 43:671-681, doi 10.2307/2532003.
// Observed and expected counts as in a public teaching file. The gamma's values by R 4.2.2 (two ways); the paper's 1.88
// and 1.32 are from memory and agree.
#include <gtest/gtest.h>

#include <array>
#include <vector>

#include "core/evidence/gamma_poisson.h"

namespace lanework::evidence {
namespace {

constexpr std::array<int, 56> kObserved = {9, 39, 11, 9,  15, 8,  26, 7, 6,  20, 13, 5, 3, 8, 17, 9,  2, 7,  9,
                                           7, 16, 31, 11, 7,  19, 15, 7, 10, 16, 11, 5, 3, 7, 8,  11, 9, 11, 8,
                                           6, 4,  10, 8,  2,  6,  19, 3, 2,  3,  28, 6, 1, 1, 1,  1,  0, 0};
constexpr std::array<double, 56> kExpected = {
    1.4, 8.7,  3,    2.5,  4.3, 2.4,  8.1,  2.3, 2,   6.6,  4.4,  1.8,  1.1, 3.3, 7.8, 4.6,  1.1,  4.2,  5.5,
    4.4, 10.5, 22.7, 8.8,  5.6, 15.5, 12.5, 6,   9,   14.4, 10.2, 4.8,  2.9, 7,   8.5, 12.3, 10.1, 12.7, 9.4,
    7.2, 5.3,  18.8, 15.8, 4.3, 14.6, 50.7, 8.2, 5.6, 9.3,  88.7, 19.6, 3.4, 3.6, 5.7, 7,    4.2,  1.8};

std::vector<SquadCount> districts() {
  std::vector<SquadCount> out;
  for (std::size_t i = 0; i < kObserved.size(); ++i) out.push_back({kObserved[i], kExpected[i]});
  return out;
}

TEST(ClaytonKaldor1987, TheDataAreWhole) {
  int observed = 0;
  double expected = 0;
  for (const SquadCount& district : districts()) {
    observed += static_cast<int>(district.events);
    expected += district.expected;
  }
  EXPECT_EQ(observed, 536);
  EXPECT_NEAR(expected, 536.2, 1e-9);
}

TEST(ClaytonKaldor1987, GammaByMaximumLikelihood) {
  const GammaPrior prior = fit_gamma_prior(districts());
  EXPECT_NEAR(prior.shape(), 1.879490, 5e-6);
  EXPECT_NEAR(prior.rate(), 1.321667, 5e-6);
  EXPECT_NEAR(prior.mean, 1.42206, 5e-6);
  EXPECT_NEAR(twice_log_likelihood(districts(), prior), -363.1522, 1e-4);
}

TEST(ClaytonKaldor1987, PosteriorMeans) {
  const std::vector<Shrunken> shrunken = shrink(districts(), fit_gamma_prior(districts()), 0.95);
  EXPECT_NEAR(shrunken[0].estimate, 3.997362, 5e-6);
  EXPECT_NEAR(shrunken[1].estimate, 4.079111, 5e-6);
  EXPECT_NEAR(shrunken[2].estimate, 2.980213, 5e-6);
  EXPECT_NEAR(shrunken[44].estimate, 0.401361, 5e-6);
  EXPECT_NEAR(shrunken[48].estimate, 0.331914, 5e-6);
  EXPECT_NEAR(shrunken[54].estimate, 0.340385, 5e-6);
  EXPECT_NEAR(shrunken[55].estimate, 0.602079, 5e-6);
  // The first two change places: 9 of 1.4 say less than 39 of 8.7.
  EXPECT_LT(shrunken[0].estimate, shrunken[1].estimate);
  EXPECT_GT(9 / 1.4, 39 / 8.7);
}

}  // namespace
}  // namespace lanework::evidence
