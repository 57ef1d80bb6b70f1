#include "app/draw/ribbon.h"

#include <algorithm>
#include <cmath>

#include "app/draw/card_words.h"
#include "app/draw/tokens.h"

namespace lanework::draw {
namespace {

constexpr double kBetweenPhases = 3;  // white between their rules
constexpr double kBarHeight = 24;
constexpr double kAxisHeight = 19;
constexpr double kTick = 3;
constexpr double kLongTick = 6;
constexpr int kLabelEverySeconds = 300;
constexpr double kLegendGap = 14;

void draw_lane_sign(const Box& box, const Pen& pen) {
  const double middle = box.y + box.height / 2;
  const double head = std::min(box.width, 9.0);
  const double half_bar = std::min(box.height / 6, 2.6);
  if (box.width > head) pen.rectangle({box.x, middle - half_bar, box.width - head, 2 * half_bar}, Ink::kInk);
  pen.shape({{box.right() - head, middle - std::min(box.height / 2, 7.0)},
             {box.right(), middle},
             {box.right() - head, middle + std::min(box.height / 2, 7.0)}},
            Ink::kInk);
}

void draw_spread_sign(const Box& box, const Pen& pen) {
  constexpr double kStep = 5;
  const int columns = std::max(1, static_cast<int>(std::floor(box.width / kStep)));
  const int rows = std::max(1, static_cast<int>(std::floor(box.height / kStep)));
  const double left = box.x + (box.width - (columns - 1) * kStep) / 2;
  const double top = box.y + (box.height - (rows - 1) * kStep) / 2;
  for (int row = 0; row < rows; ++row) {
    for (int column = 0; column < columns; ++column) {
      pen.disc({left + column * kStep, top + row * kStep}, 1.35, Ink::kInk);
    }
  }
}

void draw_pairs_sign(const Box& box, const Pen& pen) {
  constexpr double kLink = 7;
  constexpr double kStep = 14;
  constexpr double kRadius = 2.4;
  const int columns = std::max(1, static_cast<int>(std::floor((box.width + kStep - kLink - 2 * kRadius) / kStep)));
  const int rows = std::max(1, static_cast<int>(std::floor(box.height / 9)));
  const double left = box.x + (box.width - (columns - 1) * kStep - kLink) / 2;
  const double top = box.y + (box.height - (rows - 1) * 9.0) / 2;
  for (int row = 0; row < rows; ++row) {
    for (int column = 0; column < columns; ++column) {
      const Point one{left + column * kStep, top + row * 9.0};
      const Point other{one.x + kLink, one.y};
      pen.line(one, other, 1.1, Ink::kInk);
      pen.disc(one, kRadius, Ink::kInk);
      pen.disc(other, kRadius, Ink::kInk);
    }
  }
}

// Walking to the next formation: a dashed path between the segments.
void draw_change(double from, double until, const Box& bar, const Pen& pen) {
  if (until - from < 3) return;
  const double middle = bar.y + bar.height / 2;
  pen.line({from + 1.5, middle}, {until - 1.5, middle}, 1.2, Ink::kSoft, true);
}

// A break: two rules with nothing between them but its name, where that fits.
void draw_rest(double from, double until, const Box& bar, const Pen& pen) {
  if (until - from < 1) return;
  for (const double y : {bar.y, bar.bottom()}) pen.line({from + 1, y}, {until - 1, y}, kChalkLine, Ink::kInk, true);
  const double width = pen.width_of("break", TextStyle::kNote) + 1;
  if (width > until - from - 2) return;
  const double top = bar.y + (bar.height - pen.line_height(TextStyle::kNote)) / 2;
  pen.text({(from + until - width) / 2, top}, width, {TextStyle::kNote, 1, Ink::kInk, Align::kCentre}, "break");
}

void draw_part(const DrillMatter& drill, const RibbonPart& part, const Box& bar, const Pen& pen) {
  draw_rest(part.rest_from, part.change_from, bar, pen);
  draw_change(part.change_from, part.telling_from, bar, pen);
  pen.rectangle({part.telling_from, bar.y, part.until - part.telling_from, bar.height}, Ink::kInk, 0.7);
  if (part.doing_from - part.telling_from > 0.5) {
    pen.line({part.doing_from, bar.y}, {part.doing_from, bar.bottom()}, kHairline, Ink::kChalk);
  }
  const double inset = std::min(2.0, (part.until - part.doing_from) / 4);
  draw_formation(
      drill.formation,
      {part.doing_from + inset, bar.y + 2, std::max(0.5, part.until - part.doing_from - 2 * inset), bar.height - 4},
      pen);
}

// A phase is named over its first drill: whole where it fits, by its first word where that fits. A short one may
// begin further left, where no other name stands.
void draw_phases(const CardMatter& matter, const RibbonGeometry& at, double top, const Pen& pen) {
  const Setting setting{TextStyle::kNote, 1, Ink::kSoft, Align::kLeft};
  std::size_t from = 0;
  double free_from = at.bar.x;
  while (from < matter.drills.size()) {
    std::size_t next = from + 1;
    while (next < matter.drills.size() && matter.drills[next].phase == matter.drills[from].phase) ++next;
    const double left = at.parts[from].telling_from;
    const double right = at.parts[next - 1].until;
    const double height = pen.line_height(TextStyle::kNote);
    const std::string& phase = matter.drills[from].phase;
    const double until = next < matter.drills.size() ? at.parts[next].telling_from - 4 : at.bar.right();
    for (const std::string& name : {phase, phase.substr(0, phase.find(' '))}) {
      const double width = pen.width_of(name, TextStyle::kNote) + 1;
      const double x = std::min(left, until - width);
      if (x < free_from) continue;
      pen.text({x, top}, width, setting, name);
      free_from = x + width + 4;
      break;
    }
    const double end = std::max(right - kBetweenPhases, left);
    pen.line({left, top + height + 1}, {end, top + height + 1}, kChalkLine, Ink::kInk);
    from = next;
  }
}

// The finish as a width: full height at the planned finish, nothing left where nine nights in ten are done.
void draw_finish(const RibbonGeometry& at, const Pen& pen) {
  const double middle = at.bar.y + at.bar.height / 2;
  pen.shape({{at.finish, at.bar.y}, {at.nine_in_ten, middle}, {at.finish, at.bar.bottom()}}, Ink::kSoft);
  pen.line({at.finish, at.bar.y - 4}, {at.finish, at.bar.bottom() + 4}, 1.6, Ink::kInk);
  pen.line({at.slot_end, at.bar.y - 4}, {at.slot_end, at.bar.bottom() + 4}, 2.6, Ink::kInk);
}

void draw_axis(const CardMatter& matter, const RibbonGeometry& at, const Pen& pen) {
  const double top = at.bar.bottom() + 3;
  const double end = std::max({at.slot_end, at.nine_in_ten, at.finish});
  const double label_width = pen.width_of("00:00", TextStyle::kTime) + 2;
  const double label_top = top + kLongTick;
  pen.line({at.bar.x, top}, {end, top}, kHairline, Ink::kInk);
  const Setting plain{TextStyle::kNote, 1, Ink::kSoft, Align::kCentre};
  const int last = static_cast<int>(std::lround((end - at.bar.x) / at.points_a_second));
  const double slot_label = std::min(at.slot_end - label_width / 2, at.bar.right() - label_width);
  for (int second = 0; second <= last; second += 60) {
    const double x = at.bar.x + second * at.points_a_second;
    const int of_day = matter.start_minute_of_day * 60 + second;
    const bool labelled = of_day % kLabelEverySeconds == 0;
    pen.line({x, top}, {x, top + (labelled ? kLongTick : kTick)}, kHairline, Ink::kInk);
    const bool free = x - label_width / 2 > at.bar.x + label_width && x + label_width / 2 < slot_label;
    if (labelled && free) {
      pen.text({x - label_width / 2, label_top}, label_width, plain,
               words::clock_time(matter.start_minute_of_day, second));
    }
  }
  const Setting bold{TextStyle::kTime, 1, Ink::kInk, Align::kLeft};
  pen.text({at.bar.x, label_top}, label_width, bold, words::clock_time(matter.start_minute_of_day, 0));
  pen.text({slot_label, label_top}, label_width, {TextStyle::kTime, 1, Ink::kInk, Align::kRight},
           words::clock_time(matter.start_minute_of_day, matter.slot_seconds));
}

// What the signs mean, one line, only those that stand on the ribbon.
void draw_legend(const CardMatter& matter, Point at, const Pen& pen) {
  const Setting setting{TextStyle::kNote, 1, Ink::kSoft, Align::kLeft};
  const double height = pen.line_height(TextStyle::kNote);
  double x = at.x;
  const auto entry = [&](const std::string& label, auto draw) {
    const Box sign{x, at.y + 1, 20, height - 2};
    draw(sign);
    const double width = pen.width_of(label, TextStyle::kNote) + 1;
    pen.text({sign.right() + 4, at.y}, width, setting, label);
    x = sign.right() + 4 + width + kLegendGap;
  };
  const auto stands = [&](Formation formation) {
    return std::any_of(matter.drills.begin(), matter.drills.end(),
                       [&](const DrillMatter& drill) { return drill.formation == formation; });
  };
  entry("tell", [&](const Box& sign) { pen.rectangle(sign, Ink::kInk, 0.7); });
  if (stands(Formation::kLane)) entry("lanes", [&](const Box& s) { draw_formation(Formation::kLane, s, pen); });
  if (stands(Formation::kSpread))
    entry("spread out", [&](const Box& s) { draw_formation(Formation::kSpread, s, pen); });
  if (stands(Formation::kPairs)) entry("pairs", [&](const Box& s) { draw_formation(Formation::kPairs, s, pen); });
  const bool rests = std::any_of(matter.drills.begin(), matter.drills.end(),
                                 [](const DrillMatter& drill) { return drill.rest_seconds > 0; });
  if (rests) entry("break", [&](const Box& s) { draw_rest(s.x, s.right(), s, pen); });
  entry("gather or move", [&](const Box& s) { draw_change(s.x, s.right(), s, pen); });
  entry("finish, 5 to 9 nights in 10", [&](const Box& s) {
    pen.shape({{s.x + 4, s.y}, {s.right(), s.y + s.height / 2}, {s.x + 4, s.bottom()}}, Ink::kSoft);
    pen.line({s.x + 4, s.y - 1}, {s.x + 4, s.bottom() + 1}, 1.6, Ink::kInk);
  });
}

}  // namespace

void draw_formation(Formation formation, const Box& box, const Pen& pen) {
  switch (formation) {
    case Formation::kLane:
      return draw_lane_sign(box, pen);
    case Formation::kSpread:
      return draw_spread_sign(box, pen);
    case Formation::kPairs:
      return draw_pairs_sign(box, pen);
  }
}

RibbonGeometry ribbon_geometry(const CardMatter& matter, const Box& bar) {
  RibbonGeometry geometry;
  geometry.bar = bar;
  int last = std::max({matter.slot_seconds, matter.nine_in_ten_seconds, matter.planned_seconds, 1});
  for (const DrillMatter& drill : matter.drills) last = std::max(last, drill.starts_second + drill.takes_seconds);
  geometry.points_a_second = bar.width / last;
  const auto x_of = [&](int second) { return bar.x + second * geometry.points_a_second; };
  for (const DrillMatter& drill : matter.drills) {
    geometry.parts.push_back({x_of(drill.starts_second - drill.change_seconds - drill.rest_seconds),
                              x_of(drill.starts_second - drill.change_seconds), x_of(drill.starts_second),
                              x_of(drill.starts_second + drill.telling_seconds),
                              x_of(drill.starts_second + drill.takes_seconds)});
  }
  geometry.gathered = x_of(matter.gathering_seconds);
  geometry.finish = x_of(matter.planned_seconds);
  geometry.nine_in_ten = x_of(std::max(matter.nine_in_ten_seconds, matter.planned_seconds));
  geometry.slot_end = x_of(matter.slot_seconds);
  return geometry;
}

double ribbon_height(const Pen& pen) {
  return pen.line_height(TextStyle::kNote) + 6 + kBarHeight + kAxisHeight + 4 + pen.line_height(TextStyle::kNote);
}

RibbonGeometry draw_ribbon(const CardMatter& matter, const Box& box, const Pen& pen) {
  const double above = pen.line_height(TextStyle::kNote) + 6;
  const RibbonGeometry at = ribbon_geometry(matter, {box.x, box.y + above, box.width, kBarHeight});
  draw_phases(matter, at, box.y, pen);
  draw_change(at.bar.x, at.gathered, at.bar, pen);
  for (std::size_t drill = 0; drill < matter.drills.size(); ++drill) {
    draw_part(matter.drills[drill], at.parts[drill], at.bar, pen);
  }
  draw_finish(at, pen);
  draw_axis(matter, at, pen);
  draw_legend(matter, {box.x, at.bar.bottom() + kAxisHeight + 4}, pen);
  return at;
}

}  // namespace lanework::draw
