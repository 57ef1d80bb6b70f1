#include "core/figure/scene_motion.h"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/figure/figure_text.h"

namespace lanework::figure {
namespace {

// One leans on the other's shoulder and sinks; a ball goes from hand to hand beside a wall.
const char* const kTogether = R"(
[figure]
view = "front"
props = [{ kind = "wall", at = "hand_left" }]
[[figure.pose]]
label = "tall"
contacts = ["feet"]
angles = { shoulder_left = 80 }
hold = { hand_right = "partner.shoulder_left" }
props = [{ kind = "ball", at = "hand_left" }]
[figure.pose.partner]
facing = "viewer"
forward = -0.52
contacts = ["feet"]
[[figure.pose]]
label = "low"
at = 0.5
contacts = ["feet"]
angles = { shoulder_left = 80, hip_flex = 60, knee_flex = 80, ankle_flex = 20 }
hold = { hand_right = "partner.shoulder_left" }
props = [{ kind = "ball", at = "partner.hand_right" }, { kind = "cone", forward = 0.9 }]
[figure.pose.partner]
facing = "viewer"
forward = -0.56
size = 0.9
contacts = ["feet"]
)";

const char* const kApart = R"(
[figure]
view = "front"
swap_sides = true
props = [{ kind = "line", forward = 0.3 }]
[[figure.pose]]
label = "one"
contacts = ["foot_left"]
angles = { hip_flex_right = 60, knee_flex_right = 80 }
props = [{ kind = "ball", at = "hand_right" }]
[figure.pose.partner]
forward = 0.8
contacts = ["feet"]
angles = { shoulder_left = 90 }
)";

double apart(Point a, Point b) { return std::hypot(a.x - b.x, a.y - b.y); }

TEST(SceneMotion, IsEveryKeyPoseAtItsOwnMoment) {
  const Figure figure = sound_figure(kTogether);
  const SceneMotion motion(figure, View::kFront);
  for (const Pose& pose : figure.poses) {
    const Scene scene = scene_of(pose);
    const SceneMoment moment = motion.at(pose.at);
    const Body& partner = moment.scene.partner->body;
    EXPECT_NEAR(apart(moment.scene.figure.body.head, scene.figure.body.head), 0, 1e-9);
    EXPECT_NEAR(apart(moment.scene.figure.body.limbs[kRight].wrist, scene.figure.body.limbs[kRight].wrist), 0, 1e-6);
    EXPECT_NEAR(apart(partner.head, scene.partner->body.head), 0, 1e-9);
    EXPECT_NEAR(apart(partner.limbs[kLeft].toe, scene.partner->body.limbs[kLeft].toe), 0, 1e-9);
    EXPECT_DOUBLE_EQ(moment.partner_size, pose.partner->size);
  }
}

TEST(SceneMotion, AHandThatHoldsTheOtherHoldsOnBetweenKeyPoses) {
  const SceneMotion motion(sound_figure(kTogether), View::kFront);
  for (int i = 0; i <= 20; ++i) {
    const Scene scene = motion.at(i / 20.0).scene;
    EXPECT_LT(apart(scene.figure.body.limbs[kRight].hand, scene.partner->body.limbs[kLeft].shoulder), 0.01) << i;
  }
}

TEST(SceneMotion, AWallStandsAndABallGoesAlong) {
  const SceneMotion motion(sound_figure(kTogether), View::kFront);
  const auto thing = [](const SceneMoment& moment, PropKind kind) {
    for (const auto& prop : moment.props) {
      if (prop && prop->kind == kind) return prop;
    }
    return std::optional<PlacedProp>();
  };
  const SceneMoment tall = motion.at(0);
  const SceneMoment half = motion.at(0.25);
  const SceneMoment low = motion.at(0.5);
  ASSERT_EQ(tall.props.size(), 3U);
  EXPECT_NEAR(thing(tall, PropKind::kWall)->at.x, thing(low, PropKind::kWall)->at.x, 1e-6);
  EXPECT_NEAR(thing(half, PropKind::kWall)->at.x, thing(low, PropKind::kWall)->at.x, 1e-6);
  // From the one's left hand to the other's right.
  EXPECT_LT(apart(thing(tall, PropKind::kBall)->at, tall.scene.figure.body.limbs[kLeft].hand), 0.08);
  EXPECT_LT(apart(thing(low, PropKind::kBall)->at, low.scene.partner->body.limbs[kRight].hand), 0.08);
  const double midway = thing(half, PropKind::kBall)->at.x;
  EXPECT_LT(midway, thing(tall, PropKind::kBall)->at.x - 0.1);
  EXPECT_GT(midway, thing(low, PropKind::kBall)->at.x + 0.1);
  // A cone of one pose is there nearer to it.
  EXPECT_FALSE(thing(motion.at(0.2), PropKind::kCone));
  EXPECT_TRUE(thing(motion.at(0.3), PropKind::kCone));
}

TEST(SceneMotion, WithSidesSwappedTheSecondHalfIsSeenInAMirror) {
  const SceneMotion motion(sound_figure(kApart), View::kFront);
  const SceneMoment first = motion.at(0);
  const SceneMoment second = motion.at(0.5);
  EXPECT_NEAR(first.scene.partner->body.head.x, -second.scene.partner->body.head.x, 1e-9);
  EXPECT_NEAR(first.scene.partner->body.limbs[kLeft].hand.x, -second.scene.partner->body.limbs[kRight].hand.x, 1e-9);
  ASSERT_EQ(first.props.size(), 2U);
  for (std::size_t slot = 0; slot < 2; ++slot) EXPECT_NEAR(first.props[slot]->at.x, -second.props[slot]->at.x, 1e-9);
}

TEST(SceneMotion, APoseByItselfHasWhatItHas) {
  const Figure figure = sound_figure(kTogether);
  const SceneMoment low = moment_of(figure.poses[1]);
  EXPECT_EQ(low.props.size(), 3U);
  EXPECT_DOUBLE_EQ(low.partner_size, 0.9);
  EXPECT_TRUE(low.scene.partner.has_value());
}

}  // namespace
}  // namespace lanework::figure
