// Text by Pango: the same shaping measures for layout and paints on the page.
#pragma once

#include <cairo.h>
#include <pango/pango.h>

#include <map>
#include <memory>
#include <string>
#include <tuple>

#include "app/draw/text_measure.h"

namespace lanework::draw {

struct ObjectRelease {
  void operator()(void* object) const;
};
template <class T>
using Owned = std::unique_ptr<T, ObjectRelease>;

// Measures as the page will be painted. Remembers what it has measured; one thread at a time.
class PangoMeasure : public TextMeasure {
 public:
  PangoMeasure();
  Extent extent(const std::string& lead, const std::string& text, TextStyle style, double width,
                int max_lines) const override;

 private:
  using Unbroken = std::tuple<std::string, std::string, TextStyle>;
  using Key = std::tuple<std::string, std::string, TextStyle, double, int>;

  [[nodiscard]] const Extent& unbroken(const std::string& lead, const std::string& text, TextStyle style) const;

  Owned<PangoContext> context_;
  mutable std::map<Unbroken, Extent> unbroken_;  // on one line as long as it needs
  mutable std::map<Key, Extent> seen_;
};

// Paints texts on one cairo context.
class PangoPainter {
 public:
  explicit PangoPainter(cairo_t* canvas);
  void paint(const Text& text) const;

 private:
  cairo_t* canvas_;
  Owned<PangoContext> context_;
};

}  // namespace lanework::draw
