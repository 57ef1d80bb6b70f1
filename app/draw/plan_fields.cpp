#include "app/draw/plan_fields.h"

#include <algorithm>

#include "app/draw/tokens.h"

namespace lanework::draw {
namespace {

constexpr int kMostKnownLines = 6;  // room for the longest that a venue may hold

double draw_field(const PlanField& field, double writing_line, Point at, double width, const Pen& pen) {
  const double line = pen.line_height(TextStyle::kBody);
  const double label = pen.width_of(field.label, TextStyle::kBody) + 2;
  const double x = at.x + label + 4;
  if (field.known->empty()) {
    const double base = at.y + writing_line - 3;
    pen.text({at.x, base - line + 2}, label, {TextStyle::kBody, 1, Ink::kInk, Align::kLeft}, field.label);
    pen.line({x, base}, {at.x + width, base}, 0.7, Ink::kSoft);
    return writing_line;
  }
  pen.text({at.x, at.y + 3}, label, {TextStyle::kBody, 1, Ink::kInk, Align::kLeft}, field.label);
  const double room = at.x + width - x;
  return 5 +
         pen.text({x, at.y + 3}, room, {TextStyle::kBodyBold, kMostKnownLines, Ink::kInk, Align::kLeft}, *field.known);
}

}  // namespace

double draw_plan_fields(const std::vector<PlanField>& fields, double writing_line, Point at, double width,
                        const Pen& pen) {
  const double column = (width - kGutter) / 2;
  const Pen ruler(pen.measure(), nullptr);
  double y = at.y;
  for (std::size_t row = 0; row + 1 < fields.size(); row += 2) {
    const double left = draw_field(fields[row], writing_line, {}, column, ruler);
    const double right = draw_field(fields[row + 1], writing_line, {}, column, ruler);
    const double height = std::max(left, right);
    // Beside a line to write on what is known stands on its level.
    const bool write = fields[row].known->empty() || fields[row + 1].known->empty();
    const auto lower = [&](double own) { return write && height <= writing_line ? height - own : 0; };
    draw_field(fields[row], writing_line, {at.x, y + lower(left)}, column, pen);
    draw_field(fields[row + 1], writing_line, {at.x + column + kGutter, y + lower(right)}, column, pen);
    y += height;
  }
  return y - at.y;
}

}  // namespace lanework::draw
