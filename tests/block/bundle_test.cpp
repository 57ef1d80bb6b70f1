// The bundle method on functions whose least value is known.
#include "core/block/bundle.h"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/plan/random_problem.h"

namespace lanework::block {
namespace {

// The highest of |x_i - at_i| x weight_i, plus a share of their sum: least at 'at', where it is 'floor'.
struct Valley {
  std::vector<double> at;
  std::vector<double> weight;
  double floor;

  double look(const std::vector<double>& x, std::vector<double>& slope) const {
    double value = floor;
    std::size_t highest = 0;
    double most = -1;
    for (std::size_t i = 0; i < at.size(); ++i) {
      const double part = std::abs(x[i] - at[i]) * weight[i];
      value += 0.1 * part;
      slope[i] = 0.1 * weight[i] * (x[i] > at[i] ? 1 : -1);
      if (part > most) {
        most = part;
        highest = i;
      }
    }
    slope[highest] += weight[highest] * (x[highest] > at[highest] ? 1 : -1);
    return value + most;
  }
};

double least_found(const Valley& valley, std::size_t bounded_from, int rounds) {
  Bundle bundle(std::vector<double>(valley.at.size(), 0), std::vector<double>(valley.at.size(), 1), bounded_from);
  std::vector<double> slope(valley.at.size(), 0);
  double least = 1e300;
  for (int round = 0; round < rounds; ++round) {
    const double value = valley.look(bundle.next(), slope);
    least = std::min(least, value);
    bundle.add(value, slope, valley.floor);
  }
  return least;
}

TEST(Bundle, FindsTheFloorOfAValley) {
  for (std::uint64_t seed = 1; seed <= 50; ++seed) {
    plan::Dice dice(seed);
    Valley valley{{}, {}, static_cast<double>(dice.roll(-1000, 1000))};
    for (int i = 0; i < dice.roll(2, 12); ++i) {
      valley.at.push_back(dice.roll(1, 100));
      valley.weight.push_back(dice.roll(1, 9));
    }
    EXPECT_LT(least_found(valley, valley.at.size(), 400) - valley.floor, 1) << seed;
  }
}

// Held at 0 and above, the least is where the free coordinates stand at theirs and the others at 0.
TEST(Bundle, KeepsBoundedCoordinatesAtNoughtOrAbove) {
  const Valley valley{{40, -30, 25}, {2, 3, 1}, 7};
  Bundle bundle({0, 0, 0}, {1, 1, 1}, 1);
  std::vector<double> slope(3, 0);
  double least = 1e300;
  for (int round = 0; round < 300; ++round) {
    for (std::size_t i = 1; i < 3; ++i) ASSERT_GE(bundle.next()[i], 0);
    const double value = valley.look(bundle.next(), slope);
    least = std::min(least, value);
    bundle.add(value, slope, 0);
  }
  // At (40, 0, 25): 7 + 90 of the highest + 9 of the sum.
  EXPECT_NEAR(least, 106, 0.5);
}

// Lines that are known beforehand need not be found again.
TEST(Bundle, KnownLinesShortenTheWay) {
  const Valley valley{{40, -30, 25, 60}, {2, 3, 1, 4}, 7};
  struct Known {
    double at_zero;
    std::vector<float> slope;
  };
  std::vector<Known> known;
  const auto rounds_to_the_floor = [&](bool keep) {
    Bundle bundle({0, 0, 0, 0}, {1, 1, 1, 1}, 4);
    for (const Known& line : known) bundle.know(line.at_zero, line.slope);
    std::vector<double> slope(4, 0);
    for (int round = 1; round <= 300; ++round) {
      const double value = valley.look(bundle.next(), slope);
      if (value < valley.floor + 1) return round;
      bundle.add(value, slope, 0);
      if (keep && known.size() < 30)
        known.push_back({bundle.last_at_zero(), std::vector<float>(slope.begin(), slope.end())});
    }
    return 301;
  };
  const int first = rounds_to_the_floor(true);
  ASSERT_LT(first, 300);
  EXPECT_LT(rounds_to_the_floor(false), first);
}

TEST(Bundle, SharesAreOfOneWhole) {
  const Valley valley{{40, 30}, {2, 3}, 0};
  Bundle bundle({0, 0}, {1, 1}, 2);
  std::vector<double> slope(2, 0);
  for (int round = 0; round < 20; ++round) {
    const double value = valley.look(bundle.next(), slope);
    bundle.add(value, slope, 0);
    double sum = 0;
    for (const Bundle::Share& share : bundle.shares()) sum += share.share;
    EXPECT_NEAR(sum, 1, 1e-9);
  }
}

}  // namespace
}  // namespace lanework::block
