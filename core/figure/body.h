// A body: the points of a figure in the plane of the picture, by forward kinematics from its angles.
//
// Picture frame: x to the right, y up, z towards the eye, unit one stature. The figure faces right (side view)
// or the eye (front view); turning the finished picture round is the drawing's affair. Same input, same
// bytes, native and WebAssembly (trigonometry.h).
#pragma once

#include <array>
#include <string>
#include <vector>

#include "core/figure/figure.h"

namespace lanework::figure {

struct Point {
  double x = 0;
  double y = 0;
  double z = 0;
};
inline Point operator+(Point a, Point b) { return {a.x + b.x, a.y + b.y, a.z + b.z}; }
inline Point operator-(Point a, Point b) { return {a.x - b.x, a.y - b.y, a.z - b.z}; }
inline Point operator*(double s, Point p) { return {s * p.x, s * p.y, s * p.z}; }
inline Point between(Point a, Point b, double t) { return a + t * (b - a); }

struct Limbs {
  Point shoulder, elbow, wrist, hand, fingertip;
  Point hip, knee, ankle, heel, ball, toe;
};

struct Body {
  Point pelvis, waist, chest, neck, head;
  std::array<Limbs, 2> limbs;
};

// How a foot meets the ground.
enum class FootRule { kFree, kFlat, kOnBall };

// Forward kinematics with the pelvis at the origin.
Body body_of(View view, const Angles& angles, const std::array<FootRule, 2>& feet = {});

Body moved(const Body& body, double right, double up);
// Mirrored about a vertical line, and grown about a point of the ground.
Body mirrored(const Body& body, double about_x);
Body scaled(const Body& body, double size, double about_x);

Point point_of(const Body& body, const JointName& name);

// Lowest height of the flesh at a contact, and where along the ground it is.
double lowest(const Body& body, const Contact& contact);
double lowest(const Body& body);
double ground_place(const Body& body, const Contact& contact);

}  // namespace lanework::figure
