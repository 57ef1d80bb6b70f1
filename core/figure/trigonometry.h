// Sine, cosine and their inverses in degrees from additions, products and square roots only, which IEEE 754
// defines to the last bit: the same points on every machine and in WebAssembly. Accurate to about 1e-14.
#pragma once

namespace lanework::figure {

double sine(double degrees);
double cosine(double degrees);
// Angle of (x, y) from the x axis, anticlockwise, -180 to 180; 0 for the zero vector.
double direction_of(double y, double x);
// 0 to 180; the argument is clamped to -1..1.
double arc_cosine(double value);
// The same angle in -180 < a <= 180.
double wrapped(double degrees);

}  // namespace lanework::figure
