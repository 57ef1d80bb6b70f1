// Doses of the trade: common practice, no published source. Each stands in the catalogue as a step of its drill.
#include <gtest/gtest.h>

#include "tests/catalogue/shipped.h"

namespace lanework::catalogue {
namespace {

const Drill& drill_of(const std::string& id) {
  const Drill* drill = test::shipped_catalogue().find(id);
  if (drill == nullptr) throw std::out_of_range(id);
  return *drill;
}

void expect_step(const std::string& id, DoseKind kind, bool sides, int sets, int amount) {
  const Drill& drill = drill_of(id);
  EXPECT_EQ(drill.dose.kind, kind) << id;
  EXPECT_EQ(drill.dose.sides, sides) << id;
  EXPECT_GE(dose_index(drill, sets, amount), 0) << id << ": " << sets << " x " << amount;
}

TEST(CommonPractice, Holds) {
  expect_step("front-plank", DoseKind::kSeconds, false, 1, 30);
  expect_step("side-plank", DoseKind::kSeconds, true, 1, 20);
  expect_step("single-leg-stance", DoseKind::kSeconds, true, 2, 10);
}

TEST(CommonPractice, Repetitions) {
  for (const int reps : {8, 10}) expect_step("bridge", DoseKind::kReps, false, 1, reps);
  for (const int reps : {3, 4, 5, 6}) expect_step("kneeling-hamstring-lower", DoseKind::kReps, false, 1, reps);
  for (const int reps : {4, 5, 6}) expect_step("single-leg-squat", DoseKind::kReps, true, 1, reps);
  expect_step("squat", DoseKind::kReps, false, 1, 10);
}

TEST(CommonPractice, HopsAndRuns) {
  expect_step("side-to-side-hop", DoseKind::kSeconds, false, 1, 30);
  EXPECT_EQ(drill_of("strides").lane.out_share_of_top_speed, 85);
}

// A moving stretch is held for 2 to 3 s at each cone.
TEST(CommonPractice, MovingStretchesAreHeldTwoToThreeSeconds) {
  for (const std::string id : {"walking-thigh-stretch", "knee-hug-walk"}) {
    EXPECT_TRUE(drill_of(id).lane.stops_at_cones) << id;
    EXPECT_GE(drill_of(id).lane.stop.count, 2000) << id;
    EXPECT_LE(drill_of(id).lane.stop.count, 3000) << id;
  }
}

// About 2 m between players when spread out.
TEST(CommonPractice, RoomOfAboutTwoMetres) {
  std::vector<std::int64_t> widths;
  for (const Drill& drill : test::shipped_catalogue().drills) {
    if (drill.formation == Formation::kSpread) widths.push_back(drill.space_width.count);
  }
  std::sort(widths.begin(), widths.end());
  EXPECT_EQ(widths.at(widths.size() / 2), 2000);
}

}  // namespace
}  // namespace lanework::catalogue
