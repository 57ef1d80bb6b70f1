// The angles of a posture: which there are, what they are called in each view, how far a body goes.
// Degrees; zero is standing straight with the arms hanging; signs as in docs/formats/figure.md.
//
// Both views share one set of slots. An angle turns its segment in the plane of the picture; its 'aside'
// partner bends it towards or away from the eye and is seen as shortening only. In the side view 'aside'
// is abduction (shoulder_out, hip_out), in the front view it is flexion (shoulder_flex, knee_flex...).
#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace lanework::figure {

enum class View { kSide, kFront };

// Sides of limbs: near and far in the side view, left and right (the figure's own) in the front view.
inline constexpr int kNear = 0;
inline constexpr int kFar = 1;
inline constexpr int kLeft = 0;
inline constexpr int kRight = 1;

enum class MiddleAngle { kTrunk, kTrunkAside, kSpine, kNeck, kTurn };
inline constexpr int kMiddleAngles = 5;

enum class LimbAngle {
  kShoulder,
  kShoulderAside,
  kElbow,
  kElbowAside,
  kWrist,
  kHip,
  kHipAside,
  kKnee,
  kKneeAside,
  kAnkle,
  kFoot
};
inline constexpr int kLimbAngles = 11;

struct Angles {
  std::array<double, kMiddleAngles> middle{};
  std::array<std::array<double, kLimbAngles>, 2> limbs{};

  double& operator[](MiddleAngle a) { return middle[static_cast<std::size_t>(a)]; }
  double operator[](MiddleAngle a) const { return middle[static_cast<std::size_t>(a)]; }
  double& at(LimbAngle a, int side) { return limbs[static_cast<std::size_t>(side)][static_cast<std::size_t>(a)]; }
  [[nodiscard]] double at(LimbAngle a, int side) const {
    return limbs[static_cast<std::size_t>(side)][static_cast<std::size_t>(a)];
  }
  bool operator==(const Angles&) const = default;
};

// One angle as files name it. Ranges are generous limits of a healthy body (own judgement, set outside
// the ranges of motion taught in anatomy), so that a slip of the pen is caught, not an agile child.
struct AngleRow {
  std::string_view name;  // without side: 'shoulder_out'
  bool limb;              // has a side
  int slot;               // MiddleAngle or LimbAngle
  double least;
  double most;
};

// Every angle of a view, in the order of the format's table.
const std::vector<AngleRow>& angle_rows(View view);
// 'near', 'far' or 'left', 'right'.
std::string_view side_name(View view, int side);

}  // namespace lanework::figure
