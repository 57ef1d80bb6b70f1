// The picture that holds every moment of a figure: strokes of ink, and the things around it, in thousandths of stature,
// x to the right and y down from the upper left corner. docs/formats/door.md.
#pragma once

#include <limits>
#include <vector>

#include "core/base/document.h"
#include "core/figure/scene_motion.h"

namespace lanework::door {

// What every moment needs: the edges, in stature, and room for the thickness.
struct Extent {
  double left = std::numeric_limits<double>::infinity();
  double right = -std::numeric_limits<double>::infinity();
  double top = 0;
  double bottom = 0;
  void take(figure::Point at, double radius);
};

class FigurePicture {
 public:
  // moments: at least one; with_props: their partners and things too. turned: seen the other way round.
  FigurePicture(figure::View view, bool turned, std::vector<figure::SceneMoment> moments, bool with_props);

  // width, height, ground, props where they were asked for, and frames.
  void write_to(Node& answer) const;

 private:
  figure::View view_;
  bool turned_;
  bool with_props_;
  std::vector<figure::SceneMoment> moments_;
  Extent extent_;
  std::vector<std::vector<figure::PropShape>> shapes_;  // of each thing, as it is where it is first seen

  void take_bodies();
  void take_props();
  [[nodiscard]] Node body(const figure::Body& body, double size) const;
  [[nodiscard]] Node frame(const figure::SceneMoment& moment) const;
  [[nodiscard]] Node shape(const figure::PropShape& shape) const;
  [[nodiscard]] Node props() const;
  [[nodiscard]] double right(figure::Point at) const;
  [[nodiscard]] double down(figure::Point at) const;
  [[nodiscard]] const figure::PlacedProp* first_of(std::size_t slot) const;
};

}  // namespace lanework::door
