// Motion: what lies between the key poses of a figure. Joints go the shorter way round, smoothly and without
// overshoot (monotone cubics through the key poses: Fritsch and Carlson 1980, doi 10.1137/0717021); the body
// stands on the contacts of the neighbouring poses, blended where they differ.
#pragma once

#include <vector>

#include "core/figure/standing.h"

namespace lanework::figure {

class Motion {
 public:
  // The poses of one view; with swap_sides the second half of the cycle is added. Partners are not moved.
  Motion(const Figure& figure, View view);

  [[nodiscard]] bool empty() const { return keys_.empty(); }
  // fraction: 0 to 1 of the cycle; beyond that it wraps (loop) or rests at the end (once, hold).
  // REQUIRES: !empty(). At a key pose's own fraction this is that pose as scene_of stands it.
  [[nodiscard]] Stood at(double fraction) const;

 private:
  struct Key {
    double at;
    Angles angles;  // worked out, unrolled so that neighbours differ by at most 180 degrees
    std::array<FootRule, 2> feet;
    std::vector<Contact> contacts;
    double lift;
    double shift;
    Angles slope;  // degrees per cycle
  };
  void add_slopes();

  View view_;
  bool loop_;
  std::vector<Key> keys_;  // rising 'at'; a loop ends with the first key again, one cycle later
};

// Left and right, or near and far, exchanged.
Angles swapped(View view, const Angles& angles);

}  // namespace lanework::figure
