#include "app/draw/figure_drawing.h"

#include <algorithm>
#include <limits>
#include <optional>
#include <utility>

#include "app/draw/figure_outline.h"
#include "app/draw/figure_props.h"
#include "core/figure/standing.h"

namespace lanework::draw {
namespace {

using figure::Figure;
using figure::Pose;
using figure::Scene;

constexpr Colour kFarColour{0.80, 0.79, 0.77};
constexpr Colour kPartnerColour{0.93, 0.925, 0.91};
constexpr Colour kGhostColour{0.58, 0.57, 0.55};
constexpr double kAbove = 0.02;  // air over the highest point, fraction of stature
constexpr double kBelow = 0.05;  // room for the ground line
constexpr double kBeside = 0.03;

struct Extent {
  double left = std::numeric_limits<double>::max();
  double right = std::numeric_limits<double>::lowest();
  double top = 0;
  double bottom = 0;
  void take(const Outline& outline) {
    for (const Spot p : outline) {
      left = std::min(left, p.x);
      right = std::max(right, p.x);
      top = std::max(top, p.y);
      bottom = std::min(bottom, p.y);
    }
  }
  void take(const Rounded& piece) {
    for (const Arc& arc : piece) {
      const Spot c = arc.centre;
      take(Outline{{c.x - arc.radius, c.y - arc.radius}, {c.x + arc.radius, c.y + arc.radius}});
    }
  }
  void take(const Mannequin& m) {
    for (const LimbShape& shape : m.shapes) {
      for (const Rounded& piece : shape.pieces) take(piece);
    }
  }
};

// Everything in the picture, in the figure's frame.
struct Picturing {
  Mannequin figure;
  std::optional<Mannequin> partner;
  std::optional<Mannequin> ghost;
  std::vector<PropShape> props;
  std::optional<ArrowShape> arrow;
  Extent extent;
};

Picturing picture(const Figure& figure, const FigureLook& look) {
  const std::size_t index = static_cast<std::size_t>(look.pose >= 0 ? look.pose : figure.main);
  const Pose& pose = figure.poses[index];
  const Look turned{pose.view == figure::View::kFront && figure.turned, pose.eyes_closed};
  const Scene scene = figure::scene_of(pose);
  Picturing out;
  out.figure = mannequin_of(pose.view, scene.figure.body, turned);
  out.extent.take(out.figure);
  if (scene.partner) {
    out.partner = mannequin_of(pose.view, scene.partner->body,
                               Look{pose.view == figure::View::kFront && pose.partner->mirrored, false,
                                    pose.view == figure::View::kSide && pose.partner->mirrored});
    out.extent.take(*out.partner);
  }
  std::optional<Scene> ghost;
  const bool main_pose = static_cast<int>(index) == figure.main;
  if (figure.ghost >= 0 && figure.ghost != figure.main && main_pose) {
    ghost = figure::scene_of(figure.poses[static_cast<std::size_t>(figure.ghost)]);
    if (look.ghost) {
      out.ghost = mannequin_of(pose.view, ghost->figure.body, turned);
      out.extent.take(*out.ghost);
    }
  }
  const Extent bodies = out.extent;
  for (const figure::Prop& prop : pose.props) {
    for (PropShape& shape : shapes_of(prop, scene, bodies.left, bodies.right)) {
      out.extent.take(shape.outline);
      out.extent.take(shape.round);
      out.props.push_back(std::move(shape));
    }
  }
  if (figure.arrow && look.arrow && main_pose) {
    const bool follows = figure.arrow->to_pose >= 0 && ghost;
    out.arrow = arrow_of(*figure.arrow, scene, follows ? &*ghost : nullptr, follows ? &scene : nullptr);
    out.extent.take(out.arrow->shaft);
    out.extent.take(out.arrow->head);
  }
  return out;
}

// A brush in the figure's frame; lengths in points are turned into fractions of stature.
class Brush {
 public:
  Brush(cairo_t* cr, double points_per_stature, Colour paper) : cr_(cr), scale_(points_per_stature), paper_(paper) {}

  [[nodiscard]] double width(double share, double least_points) const { return std::max(share, least_points / scale_); }

  void set(Colour c) const { cairo_set_source_rgb(cr_, c.red, c.green, c.blue); }

  void path(const Outline& outline, bool closed) const {
    for (std::size_t i = 0; i < outline.size(); ++i) {
      if (i == 0) {
        cairo_move_to(cr_, outline[i].x, outline[i].y);
      } else {
        cairo_line_to(cr_, outline[i].x, outline[i].y);
      }
    }
    if (closed) cairo_close_path(cr_);
  }

  void line(const Outline& outline, double width, Colour colour) const {
    set(colour);
    cairo_set_line_width(cr_, width);
    path(outline, false);
    cairo_stroke(cr_);
  }

  void path(const Rounded& piece, double grown) const {
    constexpr double kRadian = 3.14159265358979323846 / 180;
    cairo_new_sub_path(cr_);
    for (const Arc& arc : piece) {
      cairo_arc(cr_, arc.centre.x, arc.centre.y, arc.radius + grown, arc.from * kRadian, arc.to * kRadian);
    }
    cairo_close_path(cr_);
  }

  // The union of pieces, grown by some margin.
  void fill(const std::vector<Rounded>& pieces, std::size_t from, double grown, Colour colour) const {
    set(colour);
    for (std::size_t i = from; i < pieces.size(); ++i) path(pieces[i], grown);
    cairo_fill(cr_);
  }

  // A union of pieces: a gap of paper around it, an edge, a filling.
  void shape(const std::vector<Rounded>& pieces, double gap, double edge, Colour edge_colour, Colour filling,
             std::size_t gap_from = 0) const {
    if (gap > 0 && gap_from < pieces.size()) fill(pieces, gap_from, gap + edge, paper_);
    if (edge > 0) fill(pieces, 0, edge, edge_colour);
    fill(pieces, 0, 0, filling);
  }

  // A polygon with a margin of paper and an edge around it.
  void polygon(const Outline& outline, double gap, double edge, Colour edge_colour, Colour filling) const {
    for (const auto& [width, colour] :
         {std::pair{gap > 0 ? 2 * (gap + edge) : 0, paper_}, std::pair{2 * edge, edge_colour}}) {
      if (width <= 0) continue;
      set(colour);
      cairo_set_line_width(cr_, width);
      path(outline, true);
      cairo_stroke(cr_);
    }
    set(filling);
    path(outline, true);
    cairo_fill(cr_);
  }

  [[nodiscard]] cairo_t* context() const { return cr_; }
  [[nodiscard]] Colour paper() const { return paper_; }

 private:
  cairo_t* cr_;
  double scale_;
  Colour paper_;
};

void paint_face(const Brush& brush, const Mannequin& m, Colour hair) {
  cairo_t* cr = brush.context();
  cairo_save(cr);
  brush.path(m.shapes[m.head].pieces[0], 0.0);
  cairo_clip(cr);
  brush.set(hair);
  brush.path(m.face.hair, true);
  cairo_fill(cr);
  cairo_restore(cr);
  brush.fill(m.face.eyes, 0, 0, kInkColour);
}

struct Tones {
  Colour edge;
  Colour near;
  Colour far;
  Colour hair;
};

void paint(const Brush& brush, const Mannequin& m, const Tones& tones, bool near_edge) {
  const double gap = brush.width(0.0075, 0.45);
  const double edge = brush.width(0.0045, 0.32);
  for (std::size_t i = 0; i < m.shapes.size(); ++i) {
    const LimbShape& shape = m.shapes[i];
    switch (shape.layer) {
      case Layer::kFar:
        brush.shape(shape.pieces, gap, edge, tones.edge, tones.far, shape.gap_from);
        break;
      case Layer::kNear:
        brush.shape(shape.pieces, gap, near_edge ? edge : 0, tones.edge, tones.near, shape.gap_from);
        break;
      case Layer::kFace:
        brush.shape(shape.pieces, gap, edge, tones.edge, brush.paper());
        paint_face(brush, m, tones.hair);
        break;
    }
  }
}

// The ghost: one thin line around the whole body.
void paint_ghost(const Brush& brush, const Mannequin& m) {
  std::vector<Rounded> all;
  for (const LimbShape& shape : m.shapes) all.insert(all.end(), shape.pieces.begin(), shape.pieces.end());
  brush.shape(all, 0, brush.width(0.006, 0.45), kGhostColour, brush.paper());
}

void paint_prop(const Brush& brush, const PropShape& prop) {
  const double edge = brush.width(0.007, 0.45);
  const auto area = [&](double gap, double rim, Colour rim_colour, Colour filling) {
    if (prop.round.empty()) {
      brush.polygon(prop.outline, gap, rim, rim_colour, filling);
    } else {
      brush.shape({prop.round}, gap, rim, rim_colour, filling);
    }
  };
  switch (prop.ink) {
    case PropInk::kOutline:
      area(edge, edge, kInkColour, brush.paper());
      break;
    case PropInk::kLight:
      area(0, edge / 2, kSoftColour, kFarColour);
      break;
    case PropInk::kSolid:
      area(edge, 0, kInkColour, kInkColour);
      break;
    case PropInk::kLine:
      brush.line(prop.outline, edge, kInkColour);
      break;
    case PropInk::kThin:
      brush.line(prop.outline, edge / 2, kSoftColour);
      break;
  }
}

void paint_props(const Brush& brush, const std::vector<PropShape>& props, bool before_figure) {
  for (const PropShape& prop : props) {
    if (prop.before_figure == before_figure) paint_prop(brush, prop);
  }
}

void paint_ground(const Brush& brush, const Extent& extent) {
  brush.line({{extent.left - 0.02, -brush.width(0.004, 0.3)}, {extent.right + 0.02, -brush.width(0.004, 0.3)}},
             brush.width(0.008, 0.6), kSoftColour);
}

void paint_arrow(const Brush& brush, const ArrowShape& arrow) {
  const double width = brush.width(0.014, 0.9);
  brush.line(arrow.shaft, width + brush.width(0.016, 1.0), brush.paper());
  brush.polygon(arrow.head, brush.width(0.008, 0.5), 0, kInkColour, kInkColour);
  brush.line(arrow.shaft, width, kInkColour);
}

double scale_for(const Box& box, const Extent& extent, double wanted) {
  const double width = extent.right - extent.left + 2 * kBeside;
  const double height = extent.top - extent.bottom + kAbove + kBelow;
  const double fits = std::min(box.width / width, box.height / height);
  const double standing = box.height / (1 + kAbove + kBelow);
  return std::min(fits, wanted > 0 ? wanted : standing);
}

}  // namespace

void draw_figure(cairo_t* cr, const Box& box, const Figure& figure, const FigureLook& look) {
  if (figure.empty() || box.width <= 0 || box.height <= 0) return;
  const Picturing p = picture(figure, look);
  const double scale = scale_for(box, p.extent, look.points_per_stature);
  const double middle = (p.extent.left + p.extent.right) / 2;
  cairo_save(cr);
  cairo_translate(cr, box.x + box.width / 2, box.bottom() - scale * (kBelow - p.extent.bottom));
  cairo_scale(cr, figure.turned ? -scale : scale, -scale);
  cairo_translate(cr, -middle, 0);
  cairo_set_line_cap(cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_join(cr, CAIRO_LINE_JOIN_ROUND);
  const Brush brush(cr, scale, look.paper);
  if (p.ghost) paint_ghost(brush, *p.ghost);
  paint_props(brush, p.props, false);
  if (p.partner) paint(brush, *p.partner, {kSoftColour, kPartnerColour, kPartnerColour, kSoftColour}, true);
  paint(brush, p.figure, {kInkColour, kInkColour, kFarColour, kInkColour}, false);
  paint_ground(brush, p.extent);
  paint_props(brush, p.props, true);
  if (p.arrow) paint_arrow(brush, *p.arrow);
  cairo_restore(cr);
}

}  // namespace lanework::draw
