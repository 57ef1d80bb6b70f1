#include "core/door/figure_picture.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

#include "core/figure/skeleton.h"

namespace lanework::door {
namespace {

namespace skeleton = figure::skeleton;
using figure::Body;
using figure::Limbs;
using figure::PlacedProp;
using figure::Point;
using figure::PropKind;
using figure::PropShape;
using figure::SceneMoment;
using figure::View;

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

void take(Extent& extent, View view, const Body& body, double size) {
  for (const Stroke& stroke : strokes_of(view, body)) {
    extent.take(stroke.from, size * stroke.width / 2 + kMargin);
    extent.take(stroke.to, size * stroke.width / 2 + kMargin);
  }
  extent.take(body.head, size * skeleton::kHeadRadius + kMargin);
}

void take_bodies_of(Extent& extent, View view, const SceneMoment& moment) {
  take(extent, view, moment.scene.figure.body, 1);
  if (moment.scene.partner) take(extent, view, moment.scene.partner->body, moment.partner_size);
}

Node whole(double fraction) { return Node::make_integer(std::lround(fraction * kThousand)); }

Node word(const char* text) { return Node::make_text(text); }

}  // namespace

void Extent::take(Point at, double radius) {
  left = std::min(left, at.x - radius);
  right = std::max(right, at.x + radius);
  top = std::max(top, at.y + radius);
  bottom = std::min(bottom, at.y - radius);
}

FigurePicture::FigurePicture(View view, bool turned, std::vector<SceneMoment> moments, bool with_props)
    : view_(view), turned_(turned), with_props_(with_props), moments_(std::move(moments)) {
  take_bodies();
  if (with_props_) take_props();
}

void FigurePicture::take_bodies() {
  for (const SceneMoment& moment : moments_) {
    if (with_props_) {
      take_bodies_of(extent_, view_, moment);
    } else {
      take(extent_, view_, moment.scene.figure.body, 1);
    }
  }
}

// A mat lies under the bodies of all moments that have it.
void FigurePicture::take_props() {
  for (std::size_t slot = 0; slot < moments_.front().props.size(); ++slot) {
    Extent over;
    for (const SceneMoment& moment : moments_) {
      if (moment.props[slot]) take_bodies_of(over, view_, moment);
    }
    const PlacedProp* first = first_of(slot);
    shapes_.push_back(first == nullptr ? std::vector<PropShape>{}
                                       : figure::shapes_of(*first, over.left - first->at.x, over.right - first->at.x));
    for (const SceneMoment& moment : moments_) {
      if (!moment.props[slot]) continue;
      extent_.take(moment.props[slot]->to, kMargin);
      for (const PropShape& shape : shapes_.back()) {
        if (shape.radius > 0) extent_.take(moment.props[slot]->at, shape.radius + kMargin);
        for (const Point p : shape.outline) extent_.take(moment.props[slot]->at + p, kMargin);
      }
    }
  }
}

const PlacedProp* FigurePicture::first_of(std::size_t slot) const {
  for (const SceneMoment& moment : moments_) {
    if (moment.props[slot]) return &*moment.props[slot];
  }
  return nullptr;
}

double FigurePicture::right(Point at) const { return turned_ ? extent_.right - at.x : at.x - extent_.left; }
double FigurePicture::down(Point at) const { return extent_.top - at.y; }

Node FigurePicture::body(const Body& body, double size) const {
  Node strokes = Node::make_array();
  for (const Stroke& stroke : strokes_of(view_, body)) {
    Node row = Node::make_table();
    row.set("part", word(stroke.part));
    if (stroke.side != figure::kBothSides) {
      row.set("side", Node::make_text(std::string(figure::side_name(view_, stroke.side))));
    }
    row.set("x1", whole(right(stroke.from)));
    row.set("y1", whole(down(stroke.from)));
    row.set("x2", whole(right(stroke.to)));
    row.set("y2", whole(down(stroke.to)));
    row.set("width", whole(size * stroke.width));
    strokes.items.push_back(std::move(row));
  }
  Node head = Node::make_table();
  head.set("x", whole(right(body.head)));
  head.set("y", whole(down(body.head)));
  head.set("r", whole(size * skeleton::kHeadRadius));
  Node out = Node::make_table();
  out.set("strokes", std::move(strokes));
  out.set("head", std::move(head));
  return out;
}

Node FigurePicture::frame(const SceneMoment& moment) const {
  Node out = body(moment.scene.figure.body, 1);
  if (!with_props_) return out;
  if (moment.scene.partner) out.set("partner", body(moment.scene.partner->body, moment.partner_size));
  Node props = Node::make_array();
  for (const auto& prop : moment.props) {
    Node row = Node::make_table();
    if (prop) {
      row.set("x", whole(right(prop->at)));
      row.set("y", whole(down(prop->at)));
    }
    if (prop && prop->kind == PropKind::kBand) {
      row.set("x2", whole(right(prop->to)));
      row.set("y2", whole(down(prop->to)));
    }
    props.items.push_back(std::move(row));
  }
  if (!props.items.empty()) out.set("props", std::move(props));
  return out;
}

Node FigurePicture::shape(const PropShape& shape) const {
  static constexpr std::array<const char*, 5> kInks = {"outline", "light", "solid", "line", "thin"};
  Node out = Node::make_table();
  out.set("ink", word(kInks.at(static_cast<std::size_t>(shape.ink))));
  if (shape.radius > 0) out.set("r", whole(shape.radius));
  if (shape.outline.empty()) return out;
  Node points = Node::make_array();
  for (const Point p : shape.outline) {
    points.items.push_back(whole(turned_ ? -p.x : p.x));
    points.items.push_back(whole(-p.y));
  }
  out.set("points", std::move(points));
  return out;
}

Node FigurePicture::props() const {
  static constexpr std::array<const char*, 7> kKinds = {"ball", "wall", "cone", "line", "mat", "bench", "band"};
  Node out = Node::make_array();
  for (std::size_t slot = 0; slot < shapes_.size(); ++slot) {
    const PlacedProp* first = first_of(slot);
    const PropKind kind = first == nullptr ? PropKind::kBall : first->kind;
    Node shapes = Node::make_array();
    // A band is the line between its two ends, which each frame has.
    for (const PropShape& one : shapes_[slot]) {
      if (kind != PropKind::kBand) shapes.items.push_back(shape(one));
    }
    Node row = Node::make_table();
    row.set("kind", word(kKinds.at(static_cast<std::size_t>(kind))));
    row.set("before", Node::make_boolean(figure::before_figure(kind)));
    row.set("shapes", std::move(shapes));
    out.items.push_back(std::move(row));
  }
  return out;
}

void FigurePicture::write_to(Node& answer) const {
  answer.set("width", whole(extent_.right - extent_.left));
  answer.set("height", whole(extent_.top - extent_.bottom));
  answer.set("ground", whole(extent_.top));
  if (!shapes_.empty()) answer.set("props", props());
  Node list = Node::make_array();
  for (const SceneMoment& moment : moments_) list.items.push_back(frame(moment));
  answer.set("frames", std::move(list));
}

}  // namespace lanework::door
