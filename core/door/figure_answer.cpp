#include "core/door/figure_answer.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include "core/figure/motion.h"
#include "core/figure/skeleton.h"

namespace lanework::door {
namespace {

namespace skeleton = figure::skeleton;
using figure::Body;
using figure::Limbs;
using figure::Point;
using figure::View;

constexpr int kMostFrames = 60;
constexpr double kThousand = 1000;
constexpr double kMargin = 0.03;

// Thicknesses of a limb's middle, fractions of stature (own judgement: as the card draws them).
constexpr double kUpperArm = 0.056;
constexpr double kForearm = 0.044;
constexpr double kHand = 0.032;
constexpr double kThigh = 0.090;
constexpr double kShank = 0.064;
constexpr double kFoot = 0.030;
constexpr double kNeck = 0.050;

struct Stroke {
  const char* part;
  int side;  // 2: the trunk
  Point from;
  Point to;
  double width;
};

// The whole body; what is nearer the eye comes later.
std::vector<Stroke> strokes_of(View view, const Body& body) {
  const double seat = 2 * (view == View::kSide ? skeleton::kSeatRadius : skeleton::kHipJoint + 0.03);
  const double chest = 2 * (view == View::kSide ? skeleton::kChestRadius : skeleton::kShoulderJoint - 0.01);
  std::vector<Stroke> out;
  const auto limbs = [&](int side) {
    const Limbs& one = body.limbs[static_cast<std::size_t>(side)];
    out.push_back({"thigh", side, one.hip, one.knee, kThigh});
    out.push_back({"shank", side, one.knee, one.ankle, kShank});
    out.push_back({"foot", side, one.heel, one.ball, kFoot});
    out.push_back({"foot", side, one.ball, one.toe, kFoot});
    out.push_back({"foot", side, one.ankle, figure::between(one.heel, one.ball, 0.5), kFoot});
    out.push_back({"upper-arm", side, one.shoulder, one.elbow, kUpperArm});
    out.push_back({"forearm", side, one.elbow, one.wrist, kForearm});
    out.push_back({"hand", side, one.wrist, one.fingertip, kHand});
  };
  const auto trunk = [&] {
    out.push_back({"trunk", figure::kBothSides, body.pelvis, body.waist, seat});
    out.push_back({"trunk", figure::kBothSides, body.waist, body.chest, chest});
    out.push_back({"neck", figure::kBothSides, body.neck, body.head, kNeck});
  };
  if (view == View::kSide) {
    limbs(figure::kFar);
    trunk();
    limbs(figure::kNear);
    return out;
  }
  trunk();
  limbs(figure::kLeft);
  limbs(figure::kRight);
  return out;
}

// What a picture of every moment needs: the edges, in stature, and room for the thickness.
struct Extent {
  double left = std::numeric_limits<double>::infinity();
  double right = -std::numeric_limits<double>::infinity();
  double top = 0;
  double bottom = 0;
  void take(Point at, double radius) {
    left = std::min(left, at.x - radius);
    right = std::max(right, at.x + radius);
    top = std::max(top, at.y + radius);
    bottom = std::min(bottom, at.y - radius);
  }
};

Node whole(double fraction) { return Node::make_integer(std::lround(fraction * kThousand)); }

// x to the right and y down from the picture's upper left corner, in thousandths of stature.
class Picture {
 public:
  Picture(View view, bool turned, const Extent& extent) : view_(view), turned_(turned), extent_(extent) {}

  [[nodiscard]] Node frame(const Body& body) const {
    Node strokes = Node::make_array();
    for (const Stroke& stroke : strokes_of(view_, body)) {
      Node row = Node::make_table();
      row.set("part", Node::make_text(stroke.part));
      if (stroke.side != figure::kBothSides) {
        row.set("side", Node::make_text(std::string(figure::side_name(view_, stroke.side))));
      }
      row.set("x1", whole(right(stroke.from)));
      row.set("y1", whole(down(stroke.from)));
      row.set("x2", whole(right(stroke.to)));
      row.set("y2", whole(down(stroke.to)));
      row.set("width", whole(stroke.width));
      strokes.items.push_back(std::move(row));
    }
    Node head = Node::make_table();
    head.set("x", whole(right(body.head)));
    head.set("y", whole(down(body.head)));
    head.set("r", whole(skeleton::kHeadRadius));
    Node out = Node::make_table();
    out.set("strokes", std::move(strokes));
    out.set("head", std::move(head));
    return out;
  }
  [[nodiscard]] Node width() const { return whole(extent_.right - extent_.left); }
  [[nodiscard]] Node height() const { return whole(extent_.top - extent_.bottom); }
  [[nodiscard]] Node ground() const { return whole(extent_.top); }

 private:
  View view_;
  bool turned_;
  Extent extent_;

  [[nodiscard]] double right(Point at) const { return turned_ ? extent_.right - at.x : at.x - extent_.left; }
  [[nodiscard]] double down(Point at) const { return extent_.top - at.y; }
};

// Of the rung, else the drill's.
figure::Figure read_figure_of(TableReader& drill, const std::string& rung) {
  TableReader of_rungs = drill.table("rung_figure");
  if (of_rungs.present() && of_rungs.has(rung)) return figure::read_figure(of_rungs.table(rung));
  return figure::read_figure(drill.table("figure"));
}

}  // namespace

Result<Node> answer_figure(const Document& request) {
  Faults faults;
  TableReader reader(request.file, &request.root, "", faults);
  reader.text("request");
  TableReader drill = reader.table("drill");
  const std::string rung = reader.text("rung");
  const auto frames = reader.integer_or("frames", 24, 1, kMostFrames);
  reader.finish();
  const figure::Figure figure = read_figure_of(drill, rung);
  if (figure.empty() && faults.empty()) {
    reader.fault(FaultCode::kMissing, "drill", "no figure", "a drill with a [figure] table");
  }
  if (!faults.empty()) return faults;

  const View view = figure.poses[static_cast<std::size_t>(figure.main)].view;
  const figure::Motion motion(figure, view);
  std::vector<Body> bodies;
  if (figure.cycle == figure::Cycle::kHold) {
    bodies.push_back(figure::scene_of(figure.poses[static_cast<std::size_t>(figure.main)]).figure.body);
  } else {
    for (std::int64_t i = 0; i < frames; ++i) {
      const auto parts =
          static_cast<double>(figure.cycle == figure::Cycle::kLoop ? frames : std::max<std::int64_t>(1, frames - 1));
      bodies.push_back(motion.at(static_cast<double>(i) / parts).body);
    }
  }
  Extent extent;
  for (const Body& body : bodies) {
    for (const Stroke& stroke : strokes_of(view, body)) {
      extent.take(stroke.from, stroke.width / 2 + kMargin);
      extent.take(stroke.to, stroke.width / 2 + kMargin);
    }
    extent.take(body.head, skeleton::kHeadRadius + kMargin);
  }
  const Picture picture(view, figure.turned, extent);
  static constexpr std::array<const char*, 3> kCycles = {"loop", "once", "hold"};
  Node out = Node::make_table();
  out.set("answer", Node::make_text("figure"));
  out.set("version", Node::make_integer(1));
  out.set("view", Node::make_text(view == View::kSide ? "side" : "front"));
  out.set("cycle", Node::make_text(kCycles.at(static_cast<std::size_t>(figure.cycle))));
  out.set("width", picture.width());
  out.set("height", picture.height());
  out.set("ground", picture.ground());
  Node list = Node::make_array();
  for (const Body& body : bodies) list.items.push_back(picture.frame(body));
  out.set("frames", std::move(list));
  return out;
}

}  // namespace lanework::door
