#include "core/figure/figure.h"

#include <gtest/gtest.h>

#include <string>

#include "tests/figure/figure_text.h"

namespace lanework::figure {
namespace {

Faults faults_of(const std::string& text) {
  Faults faults;
  figure_from(text, faults);
  return faults;
}

std::string pose(const std::string& lines, const std::string& view = "side") {
  return "[figure]\nview = \"" + view + "\"\n[[figure.pose]]\n" + lines + "\n";
}

TEST(ReadFigure, AbsentTableIsAnEmptyFigure) { EXPECT_TRUE(sound_figure("name = \"x\"").empty()); }

TEST(ReadFigure, BareNamesMeanBothSidesAndSidesComeLast) {
  const Figure figure = sound_figure(pose("angles = { knee = 90, knee_far = 20, trunk = 5.5 }"));
  const Angles& a = figure.poses.at(0).posture.angles;
  EXPECT_EQ(a.at(LimbAngle::kKnee, kNear), 90);
  EXPECT_EQ(a.at(LimbAngle::kKnee, kFar), 20);
  EXPECT_EQ(a[MiddleAngle::kTrunk], 5.5);
}

TEST(ReadFigure, AnglesBeyondABodyAreFaultsWithTheirPlace) {
  for (const AngleRow& row : angle_rows(View::kSide)) {
    if (row.most >= 180) continue;
    const std::string name = std::string(row.name) + (row.limb ? "_near" : "");
    const auto faults = faults_of(pose("angles = { " + name + " = " + std::to_string(row.most + 1) + " }"));
    ASSERT_EQ(faults.size(), 1u) << name;
    EXPECT_EQ(faults[0].code, FaultCode::kOutOfRange);
    EXPECT_EQ(faults[0].place.field, "figure.pose.1.angles." + name);
    EXPECT_EQ(faults[0].place.line, 4);
  }
}

TEST(ReadFigure, SidesBelongToTheirView) {
  EXPECT_EQ(faults_of(pose("angles = { knee_left = 10 }")).size(), 1u);
  EXPECT_TRUE(faults_of(pose("angles = { knee_left = 10 }", "front")).empty());
  EXPECT_EQ(faults_of(pose("contacts = [\"foot_left\"]")).size(), 1u);
}

TEST(ReadFigure, EveryFaultIsReported) {
  const auto faults =
      faults_of(pose("contacts = [\"feet\", \"tail\"]\nsettle = [\"knees_far\"]\nhold = { hand_near = \"nose\" "
                     "}\nangles = { kne = 3 }\nwhat = 1"));
  EXPECT_EQ(faults.size(), 5u);
}

TEST(ReadFigure, LabelsAndOrderAreChecked) {
  const std::string two = pose("label = \"a\"\nat = 0.5") + "[[figure.pose]]\nlabel = \"a\"\nat = 0.2\n";
  EXPECT_EQ(faults_of(two).size(), 2u);
  EXPECT_EQ(faults_of("[figure]\nview = \"side\"\nmain = \"b\"\n[[figure.pose]]\nlabel = \"a\"").size(), 1u);
  EXPECT_EQ(faults_of("[figure]\nview = \"side\"").size(), 1u);
}

TEST(ReadFigure, NoContactWhileOffTheGround) {
  const auto faults = faults_of(pose("lift = 0.1\ncontacts = [\"feet\"]"));
  ASSERT_EQ(faults.size(), 1u);
  EXPECT_EQ(faults[0].code, FaultCode::kContradiction);
}

TEST(ReadFigure, TolerancesJointByJoint) {
  const Figure figure = sound_figure(pose("tolerance_degrees = 12\ntolerances = { knee_near = 6 }"));
  const Angles& t = figure.poses.at(0).tolerance;
  EXPECT_EQ(t.at(LimbAngle::kKnee, kNear), 6);
  EXPECT_EQ(t.at(LimbAngle::kKnee, kFar), 12);
}

}  // namespace
}  // namespace lanework::figure
