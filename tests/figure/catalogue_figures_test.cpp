// Every drill that ships, and every rung that has its own, has a figure that reads without fault and stands on what it
// says it stands on.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <iterator>

#include "core/figure/motion.h"
#include "core/figure/skeleton.h"
#include "tests/figure/figure_text.h"

namespace lanework::figure {
namespace {

constexpr double kSlack = 1e-6;  // degrees

std::vector<std::filesystem::path> drill_files() {
  std::vector<std::filesystem::path> files;
  for (const auto& entry : std::filesystem::directory_iterator(LANEWORK_SOURCE_DIR "/catalogue/drills")) {
    if (entry.path().extension() == ".toml") files.push_back(entry.path());
  }
  std::sort(files.begin(), files.end());
  return files;
}

std::string text_of(const std::filesystem::path& file) {
  std::ifstream stream(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), {}};
}

// Calls 'check' with every figure that ships: of the drills, and of rungs that have their own.
template <class Check>
int for_each_figure(const Check& check) {
  int own = 0;
  for (const auto& file : drill_files()) {
    for (const NamedFigure& named : figures_of(text_of(file))) {
      SCOPED_TRACE(file.filename().string() + ": " + named.name);
      own += named.name == "figure" ? 0 : 1;
      check(named.figure);
    }
  }
  return own;
}

void expect_body_kept(const Body& body, double size) {
  const auto apart = [](Point a, Point b) { return std::hypot(a.x - b.x, a.y - b.y, a.z - b.z); };
  for (const Limbs& limb : body.limbs) {
    EXPECT_NEAR(apart(limb.hip, limb.knee), size * skeleton::kThigh, 1e-9);
    EXPECT_NEAR(apart(limb.knee, limb.ankle), size * skeleton::kShank, 1e-9);
    EXPECT_NEAR(apart(limb.shoulder, limb.elbow), size * skeleton::kUpperArm, 1e-9);
    EXPECT_NEAR(apart(limb.elbow, limb.wrist), size * skeleton::kForearm, 1e-9);
  }
  EXPECT_NEAR(apart(body.pelvis, body.waist), size * skeleton::kLowerTrunk, 1e-9);
  EXPECT_NEAR(apart(body.waist, body.neck), size * skeleton::kUpperTrunk, 1e-9);
}

TEST(CatalogueFigures, StandOnWhatTheySay) {
  ASSERT_GE(drill_files().size(), 40u);
  const int own = for_each_figure([](const Figure& figure) {
    EXPECT_FALSE(figure.empty());
    for (const Pose& pose : figure.poses) {
      for (const std::string& remark : remarks_on(pose)) ADD_FAILURE() << pose.label << ": " << remark;
    }
  });
  EXPECT_GE(own, 100);
}

// Flat feet, levelling, settling and held hands turn joints; they never stretch a limb.
TEST(CatalogueFigures, KeepTheLengthsOfTheBody) {
  for_each_figure([](const Figure& figure) {
    for (const Pose& pose : figure.poses) {
      const Scene scene = scene_of(pose);
      expect_body_kept(scene.figure.body, 1);
      if (scene.partner) expect_body_kept(scene.partner->body, pose.partner->size);
    }
  });
}

bool holds(const Posture& posture, int side) {
  return std::any_of(posture.holds.begin(), posture.holds.end(),
                     [side](const Hold& hold) { return hold.side == side; });
}

// What the comforts work out is as much a body's as what was written. Arms that hold something are left out: an upper
// arm turned in its socket lets the elbow bend either way in the picture.
TEST(CatalogueFigures, BendNoJointFurtherThanABodyDoes) {
  for_each_figure([](const Figure& figure) {
    for (const Pose& pose : figure.poses) {
      const Angles angles = scene_of(pose).figure.angles;
      for (const AngleRow& row : angle_rows(pose.view)) {
        for (int side = 0; row.limb && side < 2; ++side) {
          if (static_cast<LimbAngle>(row.slot) < LimbAngle::kHip && holds(pose.posture, side)) continue;
          const double angle = angles.at(static_cast<LimbAngle>(row.slot), side);
          EXPECT_GE(angle, row.least - kSlack) << pose.label << ' ' << row.name << ' ' << side_name(pose.view, side);
          EXPECT_LE(angle, row.most + kSlack) << pose.label << ' ' << row.name << ' ' << side_name(pose.view, side);
        }
      }
    }
  });
}

TEST(CatalogueFigures, MoveWithoutLeavingTheGround) {
  for_each_figure([](const Figure& figure) {
    const Motion motion(figure, figure.view);
    if (motion.empty()) return;
    for (int i = 0; i <= 100; ++i) {
      const double low = lowest(motion.at(i / 100.0).body);
      EXPECT_GT(low, -0.12) << i;
      EXPECT_LT(low, 0.8) << i;
    }
  });
}

}  // namespace
}  // namespace lanework::figure
