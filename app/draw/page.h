// A page before it is painted: a list of marks in drawing order, made by pure layout functions, and named
// regions that tests and later tools can look up. Lengths are points (1/72 inch), x to the right, y down.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "core/figure/figure.h"

namespace lanework::draw {

struct Point {
  double x = 0;
  double y = 0;
};

struct Box {
  double x = 0;
  double y = 0;
  double width = 0;
  double height = 0;
  [[nodiscard]] double right() const { return x + width; }
  [[nodiscard]] double bottom() const { return y + height; }
};

bool overlap(const Box& a, const Box& b);         // by more than a thousandth of a point
bool inside(const Box& inner, const Box& outer);  // within a thousandth of a point

// What a mark is drawn with. Accent is kept for 'act on this now'.
enum class Ink { kInk, kSoft, kChalk, kAccent, kPaper };

// The few sizes and weights of text; see tokens.h.
enum class TextStyle {
  kTitle,
  kHero,
  kHeading,
  kName,
  kDose,
  kTime,
  kBody,
  kBodyBold,
  kNote,
  kSmall,
  kSmallBold,
  kBigName,
  kPocket
};

enum class Align { kLeft, kCentre, kRight };

// A paragraph: the lead in bold, then the text; wrapped to the box, cut with an ellipsis after max_lines.
struct Text {
  Box box;
  TextStyle style = TextStyle::kBody;
  std::string lead;
  std::string text;
  Align align = Align::kLeft;
  int max_lines = 1;
  Ink ink = Ink::kInk;
};

struct Line {
  Point from;
  Point to;
  double width = 0.5;
  Ink ink = Ink::kInk;
  bool dashed = false;
};

// A closed or open outline; filled, or stroked where stroke > 0.
struct Shape {
  std::vector<Point> points;
  bool closed = true;
  double stroke = 0;
  Ink ink = Ink::kInk;
};

// Filled, or stroked where stroke > 0.
struct Disc {
  Point centre;
  double radius = 1;
  double stroke = 0;
  Ink ink = Ink::kInk;
};

struct Picture {
  Box box;
  const figure::Figure* figure = nullptr;
};

// A square QR code that holds the text alone.
struct QrCode {
  Box box;
  std::string text;
};

using Mark = std::variant<Text, Line, Shape, Disc, Picture, QrCode>;

struct Region {
  std::string name;  // 'drill 3', 'ribbon', 'stop'
  Box box;
};

struct Page {
  std::vector<Mark> marks;
  std::vector<Region> regions;
};

struct Pages {
  double width = 0;
  double height = 0;
  std::string title;
  std::string created;  // '2026-11-26T18:04:00Z': fixed by the session, so that bytes repeat
  std::vector<Page> sides;
};

}  // namespace lanework::draw
