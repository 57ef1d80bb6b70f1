#include "app/draw/pen.h"

#include <utility>

namespace lanework::draw {
namespace {

constexpr double kUnbounded = 4000;

}  // namespace

double Pen::text(Point at, double width, const Setting& setting, const std::string& words,
                 const std::string& lead) const {
  if (words.empty() && lead.empty()) return 0;
  const double height = measure_.extent(lead, words, setting.style, width, setting.max_lines).height;
  put(Text{{at.x, at.y, width, height}, setting.style, lead, words, setting.align, setting.max_lines, setting.ink});
  return height;
}

double Pen::width_of(const std::string& words, TextStyle style) const {
  return measure_.extent("", words, style, kUnbounded, 1).width;
}

double Pen::line_height(TextStyle style) const { return measure_.extent("", "Hg", style, kUnbounded, 1).height; }

void Pen::line(Point from, Point to, double width, Ink ink, bool dashed) const {
  put(Line{from, to, width, ink, dashed});
}

void Pen::disc(Point centre, double radius, Ink ink, double stroke) const { put(Disc{centre, radius, stroke, ink}); }

void Pen::shape(std::vector<Point> points, Ink ink, double stroke, bool closed) const {
  put(Shape{std::move(points), closed, stroke, ink});
}

void Pen::rectangle(const Box& box, Ink ink, double stroke) const {
  shape({{box.x, box.y}, {box.right(), box.y}, {box.right(), box.bottom()}, {box.x, box.bottom()}}, ink, stroke);
}

void Pen::region(const std::string& name, const Box& box) const {
  if (page_ != nullptr) page_->regions.push_back({name, box});
}

}  // namespace lanework::draw
