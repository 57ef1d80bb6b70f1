// A pen over a page: puts marks down and says how much room texts took. Without a page it only measures, so
// that one function both foretells a height and draws it.
#pragma once

#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "app/draw/page.h"
#include "app/draw/text_measure.h"

namespace lanework::draw {

// How a text is set: everything but the words and the place.
struct Setting {
  TextStyle style = TextStyle::kBody;
  int max_lines = 1;
  Ink ink = Ink::kInk;
  Align align = Align::kLeft;
};

class Pen {
 public:
  Pen(const TextMeasure& measure, Page* page) : measure_(measure), page_(page) {}

  [[nodiscard]] const TextMeasure& measure() const { return measure_; }

  // Sets a paragraph with its top left at the point; returns its height, 0 for an empty one.
  double text(Point at, double width, const Setting& setting, const std::string& words,
              const std::string& lead = "") const;
  [[nodiscard]] double width_of(const std::string& words, TextStyle style) const;
  [[nodiscard]] double line_height(TextStyle style) const;

  void line(Point from, Point to, double width, Ink ink, bool dashed = false) const;
  void disc(Point centre, double radius, Ink ink, double stroke = 0) const;
  void shape(std::vector<Point> points, Ink ink, double stroke = 0, bool closed = true) const;
  void rectangle(const Box& box, Ink ink, double stroke = 0) const;
  template <class AnyMark>
  void put(AnyMark mark) const {
    if (page_ != nullptr) page_->marks.emplace_back(std::in_place_type<AnyMark>, std::move(mark));
  }
  void region(const std::string& name, const Box& box) const;

 private:
  const TextMeasure& measure_;
  Page* page_;
};

}  // namespace lanework::draw
