#include "core/figure/angles.h"

namespace lanework::figure {
namespace {

constexpr int slot(MiddleAngle a) { return static_cast<int>(a); }
constexpr int slot(LimbAngle a) { return static_cast<int>(a); }

}  // namespace

const std::vector<AngleRow>& angle_rows(View view) {
  static const std::vector<AngleRow> side = {
      {"trunk", false, slot(MiddleAngle::kTrunk), -180, 180},
      {"spine", false, slot(MiddleAngle::kSpine), -40, 90},
      {"neck", false, slot(MiddleAngle::kNeck), -60, 70},
      {"turn", false, slot(MiddleAngle::kTurn), -90, 90},
      {"shoulder", true, slot(LimbAngle::kShoulder), -80, 190},
      {"shoulder_out", true, slot(LimbAngle::kShoulderAside), -40, 120},
      {"elbow", true, slot(LimbAngle::kElbow), -10, 155},
      {"wrist", true, slot(LimbAngle::kWrist), -90, 95},
      {"hip", true, slot(LimbAngle::kHip), -40, 140},
      {"hip_out", true, slot(LimbAngle::kHipAside), -40, 120},
      {"knee", true, slot(LimbAngle::kKnee), -10, 160},
      {"ankle", true, slot(LimbAngle::kAnkle), -65, 45},
  };
  static const std::vector<AngleRow> front = {
      {"trunk", false, slot(MiddleAngle::kTrunk), -180, 180},
      {"trunk_flex", false, slot(MiddleAngle::kTrunkAside), -40, 120},
      {"spine", false, slot(MiddleAngle::kSpine), -45, 45},
      {"neck", false, slot(MiddleAngle::kNeck), -45, 45},
      {"turn", false, slot(MiddleAngle::kTurn), -90, 90},
      {"shoulder", true, slot(LimbAngle::kShoulder), -60, 190},
      {"shoulder_flex", true, slot(LimbAngle::kShoulderAside), -80, 190},
      {"elbow", true, slot(LimbAngle::kElbow), -155, 155},
      {"elbow_flex", true, slot(LimbAngle::kElbowAside), -10, 155},
      {"wrist", true, slot(LimbAngle::kWrist), -90, 95},
      {"hip", true, slot(LimbAngle::kHip), -45, 90},
      {"hip_flex", true, slot(LimbAngle::kHipAside), -40, 140},
      {"knee", true, slot(LimbAngle::kKnee), -100, 30},
      {"knee_flex", true, slot(LimbAngle::kKneeAside), -10, 160},
      {"ankle_flex", true, slot(LimbAngle::kAnkle), -65, 45},
      {"foot", true, slot(LimbAngle::kFoot), -30, 90},
  };
  return view == View::kSide ? side : front;
}

std::string_view side_name(View view, int side) {
  if (view == View::kSide) return side == kNear ? "near" : "far";
  return side == kLeft ? "left" : "right";
}

}  // namespace lanework::figure
