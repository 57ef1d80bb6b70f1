// The figure of a drill: its key poses as data. The grammar is docs/formats/figure.md; how poses become
// points is body.h, what lies between them is motion.h.
//
// All lengths are fractions of the figure's height, all angles degrees. A Figure that came out of
// read_figure without faults has at least one pose, sound labels and angles within their ranges. A drill
// without a [figure] table gets an empty one.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "core/base/document.h"
#include "core/figure/angles.h"

namespace lanework::figure {

// Points of the body that can be named. The last group has a side.
enum class Joint {
  kHead,
  kNeck,
  kChest,
  kPelvis,
  kShoulder,
  kElbow,
  kWrist,
  kHand,
  kHip,
  kKnee,
  kAnkle,
  kFoot,
  kToes,
  kHeel
};
inline bool has_side(Joint joint) { return joint >= Joint::kShoulder; }

inline constexpr int kBothSides = 2;

struct JointName {
  Joint joint = Joint::kPelvis;
  int side = 0;           // 0, 1, or kBothSides: between the two
  bool of_other = false;  // of the partner (or, in a partner's own table, of the main figure)
};

// What touches the ground.
enum class ContactPart {
  kFoot,
  kToes,
  kHeel,
  kKnee,
  kHand,
  kForearm,
  kElbow,
  kShoulder,
  kHip,  // with a side
  kSeat,
  kBack,
  kChest,
  kHead
};
struct Contact {
  ContactPart part;
  int side = 0;
  bool operator==(const Contact&) const = default;
};

struct Hold {
  int side;  // of the hand
  JointName where;
};

struct Settle {
  LimbAngle angle;
  int side;
};

// One posture and how it stands: enough to place a body.
struct Posture {
  Angles angles;
  std::array<bool, 2> ankle_written{};  // otherwise a foot on its sole lies flat
  std::array<bool, 2> wrist_written{};  // otherwise a hand on its palm lies flat
  std::vector<Contact> contacts;
  std::vector<Settle> settle;
  std::vector<Hold> holds;
  double lift = 0;
  double shift = 0;
};

enum class PropKind { kBall, kWall, kCone, kLine, kMat, kBench, kBand };
struct Prop {
  PropKind kind;
  std::optional<JointName> at;  // else on the ground at 'forward'
  std::optional<JointName> to;  // bands
  double forward = 0;
  double height = 0.25;  // benches not at a joint
};

struct Partner {
  Posture posture;
  bool mirrored = true;  // faces the other way than the main figure
  double forward = 0.8;  // where its first contact stands
  double size = 1;
};

struct Pose {
  std::string label;
  View view = View::kSide;
  double at = 0;  // fraction of the cycle
  Posture posture;
  Angles tolerance;  // degrees, slot by slot
  bool eyes_closed = false;
  std::vector<Prop> props;  // the figure's and the pose's own
  std::optional<Partner> partner;
};

enum class Cycle { kLoop, kOnce, kHold };

enum class Direction { kUp, kDown, kForward, kBack, kToLeft, kToRight, kForwardUp, kForwardDown, kBackUp, kBackDown };
struct Arrow {
  JointName from;
  Direction direction = Direction::kUp;
  int to_pose = -1;  // the arrow follows the joint from the ghost to this pose
  double length = 0.22;
  double bend = 0;  // degrees, a curve to the left of its direction when positive
  double gap = 0.06;
};

// How the figure is turned in the picture: faces right or the eye, or the other way.
struct Figure {
  View view = View::kSide;
  bool turned = false;  // side view: faces left; front view: seen from behind
  Cycle cycle = Cycle::kLoop;
  bool swap_sides = false;
  int main = 0;    // position of the card's pose
  int ghost = -1;  // -1: none
  std::optional<Arrow> arrow;
  std::vector<Pose> poses;

  [[nodiscard]] bool empty() const { return poses.empty(); }
};

// Reads the [figure] table of a drill; faults are collected in the reader.
Figure read_figure(TableReader table);

}  // namespace lanework::figure
