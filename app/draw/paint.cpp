#include "app/draw/paint.h"

#include <array>

#include "app/draw/figure_drawing.h"
#include "app/draw/pango_text.h"
#include "app/draw/qr_code.h"

namespace lanework::draw {
namespace {

constexpr double kFullTurn = 6.283185307179586;

class Painter {
 public:
  Painter(cairo_t* canvas, Colour ground) : canvas_(canvas), ground_(ground), text_(canvas) {
    cairo_set_line_cap(canvas_, CAIRO_LINE_CAP_ROUND);
    cairo_set_line_join(canvas_, CAIRO_LINE_JOIN_ROUND);
  }

  void operator()(const Text& text) const { text_.paint(text); }

  void operator()(const Line& line) const {
    ink(line.ink);
    cairo_set_line_width(canvas_, line.width);
    const std::array<double, 2> dashes{2.5, 2.5};
    if (line.dashed) cairo_set_dash(canvas_, dashes.data(), 2, 0);
    cairo_move_to(canvas_, line.from.x, line.from.y);
    cairo_line_to(canvas_, line.to.x, line.to.y);
    cairo_stroke(canvas_);
    cairo_set_dash(canvas_, nullptr, 0, 0);
  }

  void operator()(const Shape& shape) const {
    if (shape.points.empty()) return;
    ink(shape.ink);
    cairo_new_path(canvas_);
    for (const Point& point : shape.points) cairo_line_to(canvas_, point.x, point.y);
    if (shape.closed) cairo_close_path(canvas_);
    finish(shape.stroke);
  }

  void operator()(const Disc& disc) const {
    ink(disc.ink);
    cairo_new_path(canvas_);
    cairo_arc(canvas_, disc.centre.x, disc.centre.y, disc.radius, 0, kFullTurn);
    cairo_close_path(canvas_);
    finish(disc.stroke);
  }

  void operator()(const Picture& picture) const {
    if (picture.figure == nullptr) return;
    FigureLook look;
    look.paper = ground_;
    draw_figure(canvas_, picture.box, *picture.figure, look);
  }

  void operator()(const QrCode& code) const {
    const ModuleGrid grid = qr_modules(code.text);
    if (grid.side == 0) return;
    const double module = code.box.width / grid.side;
    ink(Ink::kInk);
    cairo_save(canvas_);
    cairo_set_antialias(canvas_, CAIRO_ANTIALIAS_NONE);
    for (int row = 0; row < grid.side; ++row) {
      for (int column = 0; column < grid.side; ++column) {
        if (!grid.dark(row, column)) continue;
        int end = column;
        while (end < grid.side && grid.dark(row, end)) ++end;
        cairo_rectangle(canvas_, code.box.x + column * module, code.box.y + row * module, (end - column) * module,
                        module);
        column = end;
      }
    }
    cairo_fill(canvas_);
    cairo_restore(canvas_);
  }

 private:
  void ink(Ink ink) const {
    Colour colour = kInkColour;
    if (ink == Ink::kSoft) colour = kSoftColour;
    if (ink == Ink::kChalk) colour = kChalkColour;
    if (ink == Ink::kAccent) colour = kAccentColour;
    if (ink == Ink::kPaper) colour = ground_;
    cairo_set_source_rgb(canvas_, colour.red, colour.green, colour.blue);
  }

  void finish(double stroke) const {
    if (stroke > 0) {
      cairo_set_line_width(canvas_, stroke);
      cairo_stroke(canvas_);
    } else {
      cairo_fill(canvas_);
    }
  }

  cairo_t* canvas_;
  Colour ground_;
  PangoPainter text_;
};

}  // namespace

void paint_page(cairo_t* canvas, const Page& page, Colour ground) {
  const Painter painter(canvas, ground);
  for (const Mark& mark : page.marks) std::visit(painter, mark);
}

}  // namespace lanework::draw
