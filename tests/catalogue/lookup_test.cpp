// Looking things up, and a drill's words.
#include <gtest/gtest.h>

#include "core/catalogue/loads.h"
#include "tests/catalogue/mutate.h"
#include "tests/catalogue/sample_drills.h"
#include "tests/catalogue/shipped.h"

namespace lanework::catalogue::test {
namespace {

Drill drill_of(const Document& document) {
  Result<Drill> drill = read_drill(document);
  if (!drill.ok()) throw std::runtime_error(all_lines(drill.faults()));
  return std::move(drill).value();
}

TEST(Drill, RungReplacesAndRemovesStresses) {
  const Drill drill = drill_of(sample_spread());
  const std::vector<Stress> easy = stresses_on(drill, drill.rungs[0]);
  const std::vector<Stress> hard = stresses_on(drill, drill.rungs[1]);
  ASSERT_EQ(easy.size(), 4U);
  EXPECT_EQ(easy[0].grade, 2);
  ASSERT_EQ(hard.size(), 3U);
  EXPECT_EQ(hard[0].area, BodyArea::kShoulder);
  EXPECT_EQ(hard[0].grade, 3);
  for (const Stress& stress : hard) EXPECT_NE(stress.area, BodyArea::kKnee);
}

TEST(Drill, RungCanAddAStress) {
  Document document = sample_spread();
  set(document, "rung.2.stress.1.area", "neck");
  const Drill drill = drill_of(document);
  EXPECT_EQ(stresses_on(drill, drill.rungs[1]).size(), 4U);
}

TEST(Drill, FindsRungsAndDoses) {
  const Drill drill = drill_of(sample_spread());
  EXPECT_EQ(rung_index(drill, "far"), 1);
  EXPECT_EQ(rung_index(drill, "feet far"), -1);
  EXPECT_EQ(dose_index(drill, 2, 5), 2);
  EXPECT_EQ(dose_index(drill, 5, 2), -1);
}

TEST(Drill, DoseInWords) {
  Drill drill = drill_of(sample_spread());
  EXPECT_EQ(dose_in_words(drill, {2, 5}), "2 × 5 reps a side");
  EXPECT_EQ(dose_in_words(drill, {1, 6}), "6 reps a side");
  drill.dose.kind = DoseKind::kSeconds;
  EXPECT_EQ(dose_in_words(drill, {2, 20}), "2 × 20 s a side");
  drill.dose.sides = false;
  EXPECT_EQ(dose_in_words(drill, {1, 30}), "30 s");
  drill.dose.kind = DoseKind::kPasses;
  EXPECT_EQ(dose_in_words(drill, {1, 1}), "1 pass");
  EXPECT_EQ(dose_in_words(drill, {1, 2}), "2 passes");
  Drill pair = drill_of(sample_pairs());
  EXPECT_EQ(dose_in_words(pair, {2, 10}), "2 × 10 s each");
  pair.pair.both_at_once = true;
  EXPECT_EQ(dose_in_words(pair, {2, 10}), "2 × 10 s");
}

TEST(Catalogue, FindsByKey) {
  const Catalogue& catalogue = shipped_catalogue();
  for (const Drill& drill : catalogue.drills) EXPECT_EQ(catalogue.find(drill.id), &drill);
  EXPECT_EQ(catalogue.find("no-such-drill"), nullptr);
  EXPECT_EQ(catalogue.find(""), nullptr);
  EXPECT_EQ(catalogue.gait("gallop"), nullptr);
  EXPECT_EQ(catalogue.source("nobody-1999"), nullptr);
  ASSERT_NE(catalogue.gait("jog"), nullptr);
  EXPECT_EQ(catalogue.family(Family::kTrunk).family, Family::kTrunk);
}

TEST(Catalogue, AgesAreClamped) {
  const Catalogue& catalogue = shipped_catalogue();
  EXPECT_EQ(catalogue.ceilings_for(5).age_from, 8);
  EXPECT_EQ(catalogue.ceilings_for(40).age_to, 19);
  const Gait& run = *catalogue.gait("run");
  EXPECT_EQ(gait_speed(run, 3), gait_speed(run, 8));
  EXPECT_EQ(gait_speed(run, 99), gait_speed(run, 19));
  EXPECT_EQ(gait_speed(run, 13), MillimetresPerSecond(7000));
}

// Worked by hand: 2 sets of 5 a side are 20 repetitions; half a landing each, medium weight 1; rung factor 1.
TEST(Loads, CountBothSides) {
  const Drill drill = drill_of(sample_spread());
  const LoadSum sum = load_of(drill, drill.rungs[0], {2, 5}, kUsualLane, shipped_catalogue().limits);
  EXPECT_EQ(sum.contacts, 10'000);
  EXPECT_EQ(sum.eccentric, 10'000);
  EXPECT_EQ(sum.hard_running, 0);
}

// Worked by hand: 2 passes of 15 m out, nothing for the way back.
TEST(Loads, CountTheWayOut) {
  const Drill drill = drill_of(sample_lane());
  const LoadSum sum = load_of(drill, drill.rungs[0], {1, 2}, kUsualLane, shipped_catalogue().limits);
  EXPECT_EQ(sum.hard_running, 30'000);
  EXPECT_EQ(sum.contacts, 0);
}

// Worked by hand: 2 x 10 s at 0.2 a second is 4; half on the easier rung.
TEST(Loads, RungFactor) {
  const Drill drill = drill_of(sample_pairs());
  const Limits& limits = shipped_catalogue().limits;
  EXPECT_EQ(load_of(drill, drill.rungs[0], {2, 10}, kUsualLane, limits).eccentric, 2'000);
  EXPECT_EQ(load_of(drill, drill.rungs[1], {2, 10}, kUsualLane, limits).eccentric, 4'000);
}

}  // namespace
}  // namespace lanework::catalogue::test
