// From points back to angles: what a picture of a body says about its joints. Only what turns in the plane of
// the picture is found; limbs that bend towards the eye look shorter, and their 'aside' angles come back as 0.
#pragma once

#include "core/figure/body.h"

namespace lanework::figure {

// Degrees, signs and zero as in angles.h. In the front view the angles of feet are not seen and come back as 0.
Angles angles_of(View view, const Body& body);

// Frontal-plane projection angle of a knee: 180 minus the angle hip-knee-ankle, 0 when straight, positive when
// the knee lies towards the middle of the body from the line of hip and ankle, negative when away from it.
// middle_x: any place of the body's middle, level with the knee. Degrees. A cue for coaching only: it does not
// stand for a three-dimensional angle (munro-2012, schurr-2017 in catalogue/sources.toml).
double frontal_plane_projection_angle(Point hip, Point knee, Point ankle, double middle_x);

// Included angle at b of the corner a-b-c, 0 to 180; flexion is 180 minus this.
double included_angle(Point a, Point b, Point c);

}  // namespace lanework::figure
