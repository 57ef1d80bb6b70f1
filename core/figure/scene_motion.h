// Everybody and everything in the picture of a figure, moving: the figure as motion.h moves it, its partner by the same
// rule, hands that hold the other one in both neighbouring key poses holding on, and the things around them.
#pragma once

#include <optional>
#include <vector>

#include "core/figure/motion.h"
#include "core/figure/prop_shapes.h"

namespace lanework::figure {

struct SceneMoment {
  Scene scene;
  double partner_size = 1;  // of the main figure's height
  std::vector<std::optional<PlacedProp>>
      props;  // one place a thing, the same at every moment; none: not in the picture
};

// A key pose by itself.
SceneMoment moment_of(const Pose& pose);

class SceneMotion {
 public:
  // REQUIRES: a pose of that view. A partner whom some poses have and others do not stays in the picture.
  SceneMotion(const Figure& figure, View view);

  // As Motion::at, which the figure is moved by. What goes along with a hand goes from one to the next; what stands on
  // the ground moves only as far as the key poses have it elsewhere; what one of two key poses has is there nearer to
  // it.
  [[nodiscard]] SceneMoment at(double fraction) const;

 private:
  // A wall that a hand leans on does not follow the hand. REQUIRES: a pose has the thing at a joint.
  [[nodiscard]] PlacedProp placed_first(std::size_t slot) const;
  void move_partner(double fraction, SceneMoment& out) const;
  [[nodiscard]] std::optional<PlacedProp> prop_at(std::size_t slot, const Motion::Between& between,
                                                  const Scene& now) const;

  View view_;
  std::vector<Pose> poses_;                              // of the whole cycle
  std::vector<Scene> scenes_;                            // of these
  std::vector<std::vector<std::optional<Prop>>> props_;  // of these, by slots
  Motion figure_;
  Motion partner_;
  std::vector<std::size_t> partnered_;  // the poses that partner_ goes through
};

}  // namespace lanework::figure
