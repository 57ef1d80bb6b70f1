// Motion: what lies between the key poses of a figure. Joints go the shorter way round, smoothly and without
// overshoot (monotone cubics through the key poses: Fritsch and Carlson 1980, doi 10.1137/0717021); the body
// stands on the contacts of the neighbouring poses, blended where they differ.
#pragma once

#include <vector>

#include "core/figure/standing.h"

namespace lanework::figure {

// One body at one moment of the cycle, worked out, with what it stands on then.
struct KeyStance {
  double at;
  Stood stood;
  std::vector<Contact> contacts;
  double lift;
  double shift;
};

class Motion {
 public:
  // The poses of one view; with swap_sides the second half of the cycle is added. Partners are not moved:
  // scene_motion.h.
  Motion(const Figure& figure, View view);
  // Rising 'at'; a loop goes on with the first.
  Motion(View view, bool loop, std::vector<KeyStance> stances);

  [[nodiscard]] bool empty() const { return keys_.empty(); }
  // fraction: 0 to 1 of the cycle; beyond that it wraps (loop) or rests at the end (once, hold).
  // REQUIRES: !empty(). At a key pose's own fraction this is that pose as scene_of stands it.
  [[nodiscard]] Stood at(double fraction) const;

  // The two stances that a moment lies between, the second counted on past the last in a loop, and how much of the way.
  struct Between {
    std::size_t from;
    std::size_t to;
    double share;
    double ease;  // of what has no speed at a key pose
  };
  [[nodiscard]] Between between(double fraction) const;

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
Contact swapped(Contact contact);

}  // namespace lanework::figure
