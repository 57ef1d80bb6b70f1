#include "core/figure/motion.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>

#include "core/figure/trigonometry.h"
#include "tests/figure/figure_text.h"

namespace lanework::figure {
namespace {

const char* const kSquat = R"(
[figure]
view = "side"
[[figure.pose]]
label = "top"
contacts = ["feet"]
[[figure.pose]]
label = "bottom"
at = 0.45
contacts = ["feet"]
angles = { trunk = 38, hip = 120, knee = 105, shoulder = 90 }
)";

const char* const kRun = R"(
[figure]
view = "side"
swap_sides = true
[[figure.pose]]
label = "drive"
contacts = ["toes_far"]
angles = { trunk = 12, turn = 20, hip_near = 80, knee_near = 95, hip_far = -10, knee_far = 12, ankle_far = -25 }
[[figure.pose]]
label = "land"
at = 0.25
contacts = ["foot_near"]
angles = { trunk = 8, hip_near = 30, knee_near = 22, hip_far = 0, knee_far = 100 }
)";

void expect_same(const Body& a, const Body& b) {
  EXPECT_NEAR(a.pelvis.x, b.pelvis.x, 1e-9);
  EXPECT_NEAR(a.pelvis.y, b.pelvis.y, 1e-9);
  EXPECT_NEAR(a.head.x, b.head.x, 1e-9);
  for (std::size_t side = 0; side < 2; ++side) {
    EXPECT_NEAR(a.limbs[side].ankle.x, b.limbs[side].ankle.x, 1e-9);
    EXPECT_NEAR(a.limbs[side].ankle.y, b.limbs[side].ankle.y, 1e-9);
    EXPECT_NEAR(a.limbs[side].wrist.x, b.limbs[side].wrist.x, 1e-9);
  }
}

TEST(Motion, PassesThroughItsKeyPoses) {
  for (const char* text : {kSquat, kRun}) {
    const Figure figure = sound_figure(text);
    const Motion motion(figure, View::kSide);
    for (const Pose& pose : figure.poses) expect_same(motion.at(pose.at).body, scene_of(pose).figure.body);
    expect_same(motion.at(1).body, motion.at(0).body);
    expect_same(motion.at(1.3).body, motion.at(0.3).body);
  }
}

TEST(Motion, SecondHalfHasTheSidesExchanged) {
  const Motion motion(sound_figure(kRun), View::kSide);
  for (const double f : {0.0, 0.1, 0.25, 0.4}) {
    const Stood first = motion.at(f);
    const Stood second = motion.at(f + 0.5);
    EXPECT_NEAR(first.angles.at(LimbAngle::kHip, kNear), second.angles.at(LimbAngle::kHip, kFar), 1e-9);
    EXPECT_NEAR(first.angles[MiddleAngle::kTurn], -second.angles[MiddleAngle::kTurn], 1e-9);
    EXPECT_NEAR(first.body.limbs[kNear].ankle.y, second.body.limbs[kFar].ankle.y, 1e-9);
  }
}

TEST(Motion, NeverOvershootsAndStaysOnTheGround) {
  EXPECT_TRUE(rc::check([] {
    const Motion motion(sound_figure(kSquat), View::kSide);
    const double f = *rc::gen::inRange(0, 100000) / 100000.0;
    const Stood stood = motion.at(f);
    const double knee = stood.angles.at(LimbAngle::kKnee, kNear);
    RC_ASSERT(knee >= -1e-9);
    RC_ASSERT(knee <= 105 + 1e-9);
    RC_ASSERT(std::fabs(lowest(stood.body, {ContactPart::kFoot, kNear})) < 1e-9);
    // No jumps: a thousandth of the cycle moves no joint by more than a degree.
    const Stood next = motion.at(f + 0.001);
    RC_ASSERT(std::fabs(next.angles.at(LimbAngle::kHip, kNear) - stood.angles.at(LimbAngle::kHip, kNear)) < 1.0);
  }));
}

TEST(Motion, GoesTheShorterWayRound) {
  const Figure figure = sound_figure(R"(
[figure]
view = "side"
cycle = "once"
[[figure.pose]]
label = "a"
contacts = ["back"]
angles = { trunk = -170 }
[[figure.pose]]
label = "b"
at = 1.0
contacts = ["back"]
angles = { trunk = 170 }
)");
  const Motion motion(figure, View::kSide);
  for (double f = 0; f <= 1; f += 0.125) {
    EXPECT_GE(std::fabs(wrapped(motion.at(f).angles[MiddleAngle::kTrunk])), 170 - 1e-9) << f;
  }
  EXPECT_NEAR(wrapped(motion.at(2).angles[MiddleAngle::kTrunk]), 170, 1e-9);
}

TEST(Motion, AHoldRests) {
  const Figure figure = sound_figure(
      "[figure]\nview = \"front\"\ncycle = \"hold\"\n[[figure.pose]]\ncontacts = [\"foot_left\"]\nangles = { "
      "hip_flex_right = 40 }");
  const Motion motion(figure, View::kFront);
  expect_same(motion.at(0).body, motion.at(0.7).body);
  EXPECT_TRUE(Motion(figure, View::kSide).empty());
}

}  // namespace
}  // namespace lanework::figure
