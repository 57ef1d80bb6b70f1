#include "app/draw/strip_plan.h"

#include <algorithm>
#include <cmath>

#include "app/draw/card_words.h"
#include "app/draw/tokens.h"

namespace lanework::draw {
namespace {

constexpr double kWaitingMetres = 3;  // room behind the first cone
constexpr double kWaitingStep = 0.8;  // between those who wait
constexpr double kLeastStep = 4.4;    // points, so that dots stay apart on a small drawing
constexpr int kWaitingDrawn = 3;
constexpr double kBesideMetres = 2;      // between lanes and an area that stands beside them
constexpr double kLeastWidthMetres = 2;  // of a single lane
constexpr double kMostPointsAMetre = 30;
constexpr double kConeRadius = 2.2;

double in_metres(int millimetres) { return millimetres / 1000.0; }

double lanes_width(const StripMatter& strip) { return in_metres(strip.lane_gap_mm) * (strip.lanes - 1); }

// Extent of the drawing in metres, and where the lanes start in it.
struct Extents {
  double length = 0;
  double width = 0;
  double start = 0;  // x of the first cone
};

bool has_area(const StripMatter& strip) { return strip.area_length_mm > 0 && strip.area_width_mm > 0; }

bool fits_around(const StripMatter& strip) {
  return has_area(strip) && strip.area_length_mm >= strip.lane_length_mm &&
         in_metres(strip.area_width_mm) >= lanes_width(strip);
}

Extents extents_of(const StripMatter& strip) {
  Extents extents;
  extents.start = kWaitingMetres;
  extents.length = kWaitingMetres + in_metres(strip.lane_length_mm);
  extents.width = std::max(lanes_width(strip), kLeastWidthMetres);
  if (!has_area(strip)) return extents;
  if (fits_around(strip)) {
    extents.length = kWaitingMetres + in_metres(strip.area_length_mm);
  } else {
    extents.length += kBesideMetres + in_metres(strip.area_length_mm);
  }
  return extents;
}

std::vector<Point> cones_of_lane(const StripMatter& strip, Point start, double scale) {
  std::vector<Point> cones;
  for (int at = 0; at <= strip.lane_length_mm; at += std::max(strip.cone_spacing_mm, 1)) {
    cones.push_back({start.x + in_metres(at) * scale, start.y});
  }
  return cones;
}

void draw_cone(Point at, const Pen& pen) {
  pen.disc(at, kConeRadius, Ink::kPaper);
  pen.disc(at, kConeRadius, Ink::kInk, 1.1);
  pen.disc(at, 0.7, Ink::kInk);
}

void draw_arrow(Point from, Point to, const Pen& pen) {
  pen.line(from, {to.x - 3, to.y}, 0.9, Ink::kInk);
  pen.shape({{to.x - 5, to.y - 2.6}, {to.x, to.y}, {to.x - 5, to.y + 2.6}}, Ink::kInk);
}

void draw_lane(const StripGeometry& geometry, std::size_t lane, const Pen& pen) {
  const std::vector<Point>& cones = geometry.cones[lane];
  const Point start = cones.front();
  const Point end{geometry.lanes.right(), start.y};
  pen.line(start, end, kChalkLine, Ink::kChalk);
  const double gap = end.x - start.x;
  draw_arrow({start.x + gap * 0.06, start.y - 5}, {start.x + gap * 0.06 + std::min(26.0, gap * 0.3), start.y - 5}, pen);
  for (const Point& cone : cones) draw_cone(cone, pen);
  for (const Point& player : geometry.waiting[lane]) pen.disc(player, 1.8, Ink::kInk);
}

// A grid of dots as far apart as players stand when they spread out.
void draw_area(const StripMatter& strip, const StripGeometry& geometry, const Pen& pen) {
  const Box& area = geometry.area;
  if (area.width <= 0) return;
  const Point corners[] = {
      {area.x, area.y}, {area.right(), area.y}, {area.right(), area.bottom()}, {area.x, area.bottom()}};
  for (std::size_t side = 0; side < 4; ++side) {
    if (geometry.area_cut && side % 2 == 0) continue;
    pen.line(corners[side], corners[(side + 1) % 4], 0.7, Ink::kSoft, true);
  }
  const double step = std::max(in_metres(strip.spread_gap_mm) * geometry.points_a_metre, 6.0);
  const int columns = static_cast<int>(std::floor(area.width / step));
  const int rows = static_cast<int>(std::floor(area.height / step));
  for (int row = 0; row < rows; ++row) {
    for (int column = 0; column < columns; ++column) {
      const Point dot{area.x + (area.width - (columns - 1) * step) / 2 + column * step,
                      area.y + (area.height - (rows - 1) * step) / 2 + row * step};
      pen.disc(dot, 0.8, Ink::kChalk);
    }
  }
}

void draw_length(const StripMatter& strip, const StripGeometry& geometry, double top, const Pen& pen) {
  const double left = geometry.lanes.x;
  const double right = geometry.lanes.right();
  pen.line({left, top + 3}, {right, top + 3}, kHairline, Ink::kInk);
  for (const double x : {left, right}) pen.line({x, top}, {x, top + 6}, kHairline, Ink::kInk);
  const std::string words = words::metres(strip.lane_length_mm);
  const double width = std::max(pen.width_of(words, TextStyle::kTime) + 2, right - left);
  pen.text({(left + right - width) / 2, top + 6}, width, {TextStyle::kTime, 1, Ink::kInk, Align::kCentre}, words);
}

// A distance on the drawing, cleared of the dots beneath it.
void put_distance(const std::string& words, const Box& box, const Pen& pen) {
  pen.rectangle({box.x - 1, box.y + 1, box.width + 2, box.height - 2}, Ink::kPaper);
  pen.text({box.x, box.y}, box.width, {TextStyle::kNote, 1, Ink::kInk, Align::kLeft}, words);
}

// The distances between cones and between lanes, where there is room for them.
void draw_spacing(const StripMatter& strip, const StripGeometry& geometry, const Pen& pen) {
  const std::vector<Point>& cones = geometry.cones.front();
  const double line = pen.line_height(TextStyle::kNote);
  const std::string apart = words::metres(strip.cone_spacing_mm);
  const double width = pen.width_of(apart, TextStyle::kNote) + 1;
  if (cones.size() > 1 && cones.back().x - cones[cones.size() - 2].x > width + 8) {
    const double middle = (cones.back().x + cones[cones.size() - 2].x) / 2;
    put_distance(apart, {middle - width / 2, cones.back().y - line - 2, width, line}, pen);
  }
  if (strip.lanes < 2) return;
  const Point upper = geometry.cones[0].back();
  const Point lower = geometry.cones[1].back();
  const std::string gap = words::metres(strip.lane_gap_mm);
  const double gap_width = pen.width_of(gap, TextStyle::kNote) + 1;
  if (lower.y - upper.y < line + 8 || upper.x - geometry.lanes.x < gap_width + 8) return;
  pen.line({upper.x, upper.y + 4}, {lower.x, lower.y - 4}, kHairline, Ink::kInk);
  put_distance(gap, {upper.x - gap_width - 4, (upper.y + lower.y - line) / 2, gap_width, line}, pen);
}

}  // namespace

StripGeometry strip_geometry(const StripMatter& strip, const Box& box) {
  StripGeometry geometry;
  const Extents extents = extents_of(strip);
  geometry.points_a_metre =
      std::min({(box.width - 2) / extents.length, (box.height - 2) / extents.width, kMostPointsAMetre});
  const double scale = geometry.points_a_metre;
  geometry.area_around_lanes = fits_around(strip);
  const double middle = box.y + box.height / 2;
  const Point start{box.x + 1 + extents.start * scale, middle - lanes_width(strip) * scale / 2};
  const double length = in_metres(strip.lane_length_mm) * scale;
  geometry.lanes = {start.x, start.y, length, lanes_width(strip) * scale};
  for (int lane = 0; lane < strip.lanes; ++lane) {
    const Point first{start.x, start.y + lane * in_metres(strip.lane_gap_mm) * scale};
    geometry.cones.push_back(cones_of_lane(strip, first, scale));
    std::vector<Point> waiting;
    for (int place = 1; place <= kWaitingDrawn; ++place) {
      waiting.push_back({first.x - 1 - place * std::max(kWaitingStep * scale, kLeastStep), first.y});
    }
    geometry.waiting.push_back(std::move(waiting));
  }
  if (has_area(strip)) {
    const double whole = in_metres(strip.area_width_mm) * scale;
    const double width = std::min(whole, box.height);
    geometry.area_cut = whole > box.height;
    const double left = geometry.area_around_lanes ? start.x : geometry.lanes.right() + kBesideMetres * scale;
    geometry.area = {left, middle - width / 2, in_metres(strip.area_length_mm) * scale, width};
  }
  return geometry;
}

StripGeometry draw_strip(const StripMatter& strip, const Box& box, const Pen& pen) {
  const double below = 8 + pen.line_height(TextStyle::kTime);
  const StripGeometry geometry = strip_geometry(strip, {box.x, box.y, box.width, box.height - below});
  draw_area(strip, geometry, pen);
  for (std::size_t lane = 0; lane < geometry.cones.size(); ++lane) draw_lane(geometry, lane, pen);
  draw_spacing(strip, geometry, pen);
  draw_length(strip, geometry, std::max(geometry.lanes.bottom() + 4, geometry.area.bottom()) + 2, pen);
  return geometry;
}

std::vector<StripLine> strip_lines(const StripMatter& strip) {
  const auto said = [&](int millimetres) {
    return words::metres(millimetres) + ", " + words::paces(millimetres, strip.pace_mm);
  };
  std::vector<StripLine> lines;
  const int cones = (strip.lane_length_mm / std::max(strip.cone_spacing_mm, 1) + 1) * strip.lanes;
  lines.push_back({words::counted(strip.lanes, "lane", "lanes"), said(strip.lane_length_mm)});
  lines.push_back({words::counted(cones, "cone", "cones"), "every " + said(strip.cone_spacing_mm)});
  if (strip.lanes > 1) lines.push_back({"Lanes apart", said(strip.lane_gap_mm)});
  if (has_area(strip)) {
    lines.push_back({"Spread out", words::metres(strip.spread_gap_mm) + " apart"});
    lines.push_back({"Area", words::metres(strip.area_length_mm) + " \u00D7 " + words::metres(strip.area_width_mm)});
  }
  const std::string whose = strip.pace_of.empty() ? "" : ", " + strip.pace_of;
  lines.push_back({"1 pace", std::to_string(strip.pace_mm / 10) + " cm" + whose});
  return lines;
}

}  // namespace lanework::draw
