// The look in numbers, shared by every page: inks, sizes, weights, families. Readable at arm's length in the
// rain: nothing below 9 points, names 12, doses bold (own judgement, from print trials on A4). What is read at a desk
// may be a little smaller.
#pragma once

#include "app/draw/page.h"

namespace lanework::draw {

struct Colour {
  double red;
  double green;
  double blue;
};

constexpr Colour kInkColour{0.09, 0.10, 0.11};
constexpr Colour kSoftColour{0.34, 0.35, 0.36};
constexpr Colour kChalkColour{0.72, 0.71, 0.68};
constexpr Colour kAccentColour{0.76, 0.27, 0.08};
constexpr Colour kPaperColour{0.984, 0.973, 0.945};  // the ground of SVG and PNG; PDF stays white

// Asked for in this order; a later one serves the scripts that an earlier one lacks.
constexpr const char* kFamilies =
    "B612, Noto Sans, Noto Naskh Arabic, Noto Sans Arabic, Noto Sans Hebrew, Noto Sans Devanagari, DejaVu Sans, "
    "Noto Sans CJK SC, WenQuanYi Micro Hei, Droid Sans Fallback";

struct Typeface {
  double size;  // points
  bool bold;
};

constexpr Typeface typeface(TextStyle style) {
  switch (style) {
    case TextStyle::kTitle:
      return {24, true};
    case TextStyle::kHero:
      return {46, true};
    case TextStyle::kHeading:
      return {10, true};
    case TextStyle::kName:
      return {12, true};
    case TextStyle::kDose:
      return {11, true};
    case TextStyle::kTime:
      return {9.5, true};
    case TextStyle::kBody:
      return {9.5, false};
    case TextStyle::kBodyBold:
      return {9.5, true};
    case TextStyle::kNote:
      return {9, false};
    case TextStyle::kSmall:
      return {8, false};
    case TextStyle::kSmallBold:
      return {8.5, true};
    case TextStyle::kBigName:
      return {13, true};
    case TextStyle::kPocket:
      return {11, false};
  }
  return {9.5, false};
}

constexpr double kMargin = 27;  // all round; home printers leave 12 to 18 points white
constexpr double kGutter = 18;  // between columns
constexpr double kHairline = 0.5;
constexpr double kChalkLine = 0.8;

}  // namespace lanework::draw
