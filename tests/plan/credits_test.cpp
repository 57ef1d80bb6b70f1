#include "core/plan/credits.h"

#include <gtest/gtest.h>

#include "core/plan/constants.h"
#include "tests/catalogue/shipped.h"

namespace lanework::plan {
namespace {

const catalogue::Catalogue& shipped() { return catalogue::test::shipped_catalogue(); }

int credits(const char* id, int sets, int amount, int age) {
  const catalogue::Drill& drill = *shipped().find(id);
  return credits_of(drill, {sets, amount}, shipped().family(drill.family), age);
}

// Eight bridges of 4 s on either leg are 64 s of the 30 s of a full session: 8.53 quarters.
TEST(Credits, WorkThatIsNotEccentricCountsHalfFromTwelveOn) {
  EXPECT_EQ(credits("single-leg-bridge", 1, 8, 11), 9);
  EXPECT_EQ(credits("single-leg-bridge", 1, 8, 12), 4);
  EXPECT_EQ(credits("single-leg-bridge", 1, 8, 19), 4);
}

TEST(Credits, EccentricWorkCountsWholeAtEveryAge) {
  for (const int age : {12, 14, 19}) EXPECT_EQ(credits("kneeling-hamstring-lower", 1, 5, age), 4) << age;
  EXPECT_EQ(credits("walking-bridge", 1, 4, 11), credits("walking-bridge", 1, 4, 15));
}

TEST(Credits, OtherFamiliesDoNotAsk) {
  for (const int age : {8, 12, 19}) EXPECT_EQ(credits("side-plank", 2, 20, age), 5) << age;
}

TEST(Credits, TheLeastIsAQuarterAndTheMostForty) {
  EXPECT_EQ(credits("squat", 1, 1, 10), 1);
  EXPECT_EQ(credits("squat", 9, 99, 10), kMostCredits);
}

}  // namespace
}  // namespace lanework::plan
