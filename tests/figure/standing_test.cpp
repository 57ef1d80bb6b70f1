#include "core/figure/standing.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/figure/measured_angles.h"
#include "core/figure/trigonometry.h"
#include "tests/figure/figure_text.h"

namespace lanework::figure {
namespace {

Scene scene_from(const std::string& pose, const std::string& view = "side") {
  const Figure figure = sound_figure("[figure]\nview = \"" + view + "\"\n[[figure.pose]]\n" + pose);
  EXPECT_EQ(figure.poses.size(), 1u);
  return scene_of(figure.poses.at(0));
}

TEST(Standing, SquatHasFlatFeetUnderAMovingShank) {
  const Body body = scene_from("contacts = [\"feet\"]\nangles = { trunk = 38, hip = 120, knee = 105 }").figure.body;
  for (const Limbs& l : body.limbs) {
    EXPECT_NEAR(l.heel.y, 0, 1e-9);
    EXPECT_NEAR(l.ball.y, 0, 1e-9);
    EXPECT_GT(l.toe.x, l.heel.x);
    // Flexion is 180 less the included angle.
    EXPECT_NEAR(180 - included_angle(l.hip, l.knee, l.ankle), 105, 1e-9);
  }
}

TEST(Standing, PlankIsTiltedUntilBothEndsTouch) {
  for (const double rough : {70.0, 85.0, 100.0}) {
    const Body body = scene_from("contacts = [\"forearms\", \"toes\"]\nangles = { trunk = " + std::to_string(rough) +
                                 ", shoulder = 80, elbow = 90 }")
                          .figure.body;
    for (int side = 0; side < 2; ++side) {
      EXPECT_NEAR(lowest(body, {ContactPart::kForearm, side}), 0, 1e-6);
      EXPECT_NEAR(lowest(body, {ContactPart::kToes, side}), 0, 1e-6);
      const Limbs& l = body.limbs[static_cast<std::size_t>(side)];
      EXPECT_NEAR(l.elbow.y, l.wrist.y, 1e-6);
    }
  }
}

TEST(Standing, KneelingTouchesWithKneesAndToes) {
  const Body body = scene_from("contacts = [\"knees\", \"toes\"]\nangles = { trunk = 30, knee = 60 }").figure.body;
  for (int side = 0; side < 2; ++side) {
    EXPECT_NEAR(lowest(body, {ContactPart::kKnee, side}), 0, 1e-6);
    EXPECT_NEAR(lowest(body, {ContactPart::kToes, side}), 0, 1e-6);
  }
}

TEST(Standing, SettledKneeBringsTheRearFootDown) {
  const Body body = scene_from(
                        "contacts = [\"foot_near\", \"toes_far\"]\nsettle = [\"knee_far\"]\n"
                        "angles = { hip_near = 80, knee_near = 85, hip_far = -15, knee_far = 60 }")
                        .figure.body;
  EXPECT_NEAR(lowest(body, {ContactPart::kFoot, kNear}), 0, 1e-6);
  EXPECT_NEAR(lowest(body, {ContactPart::kToes, kFar}), 0, 1e-6);
}

TEST(Standing, HeldHandIsWhereItHolds) {
  const Body side = scene_from(
                        "contacts = [\"foot_far\"]\nhold = { hand_near = \"ankle_near\" }\nangles = { trunk = 5, "
                        "hip_near = -5, knee_near = 140 }")
                        .figure.body;
  EXPECT_NEAR(side.limbs[kNear].hand.x, side.limbs[kNear].ankle.x, 1e-6);
  EXPECT_NEAR(side.limbs[kNear].hand.y, side.limbs[kNear].ankle.y, 1e-6);
  const Body front =
      scene_from("contacts = [\"feet\"]\nhold = { hand_left = \"hip_left\", hand_right = \"shoulder_left\" }", "front")
          .figure.body;
  EXPECT_NEAR(front.limbs[kLeft].hand.x, front.limbs[kLeft].hip.x, 1e-6);
  EXPECT_NEAR(front.limbs[kRight].hand.y, front.limbs[kLeft].shoulder.y, 1e-6);
}

TEST(Standing, PartnerHoldsTheOthersAnkle) {
  const Scene scene = scene_from(
      "contacts = [\"knees\", \"toes\"]\n"
      "[figure.pose.partner]\nfacing = \"right\"\nforward = -0.35\ncontacts = [\"knees\", \"toes\"]\n"
      "angles = { trunk = 60, hip = 95, knee = 115 }\nhold = { hand_near = \"other.ankle_near\" }");
  ASSERT_TRUE(scene.partner.has_value());
  EXPECT_NEAR(scene.partner->body.limbs[kNear].hand.x, scene.figure.body.limbs[kNear].ankle.x, 1e-6);
  EXPECT_NEAR(scene.partner->body.limbs[kNear].hand.y, scene.figure.body.limbs[kNear].ankle.y, 1e-6);
}

TEST(Standing, LiftRaisesTheWholeFigure) {
  const Body body = scene_from("lift = 0.12\nangles = { ankle = -30, knee = 10, hip = 10 }").figure.body;
  EXPECT_NEAR(lowest(body), 0.12, 1e-9);
}

TEST(Standing, FirstContactStaysInItsPlace) {
  for (const char* angles : {"{ }", "{ trunk = 30, hip = 110, knee = 100 }"}) {
    const Body body =
        scene_from(std::string("contacts = [\"foot_far\", \"foot_near\"]\nangles = ") + angles).figure.body;
    EXPECT_NEAR(ground_place(body, {ContactPart::kFoot, kFar}), 0, 1e-9);
  }
}

TEST(Standing, RemarksOnAFloatingFoot) {
  const Figure figure = sound_figure(
      "[figure]\nview = \"side\"\n[[figure.pose]]\ncontacts = [\"feet\"]\nangles = { hip_near = 60, knee_near = 60 }");
  const auto remarks = remarks_on(figure.poses.at(0));
  ASSERT_EQ(remarks.size(), 1u);
  EXPECT_NE(remarks[0].find("foot_near stays"), std::string::npos);
}

}  // namespace
}  // namespace lanework::figure
