#include "core/figure/trigonometry.h"

#include <cmath>

namespace lanework::figure {
namespace {

constexpr double kRadian = 3.14159265358979323846 / 180.0;

// Taylor series about zero; |degrees| <= 45, so the first term left out is below 1e-17.
double small_sine(double degrees) {
  const double x = degrees * kRadian;
  const double q = x * x;
  return x * (1 - q / 6 * (1 - q / 20 * (1 - q / 42 * (1 - q / 72 * (1 - q / 110 * (1 - q / 156 * (1 - q / 210)))))));
}

double small_cosine(double degrees) {
  const double x = degrees * kRadian;
  const double q = x * x;
  return 1 -
         q / 2 *
             (1 - q / 12 * (1 - q / 30 * (1 - q / 56 * (1 - q / 90 * (1 - q / 132 * (1 - q / 182 * (1 - q / 240)))))));
}

}  // namespace

double wrapped(double degrees) {
  double a = degrees - 360.0 * std::floor(degrees / 360.0);
  if (a > 180.0) a -= 360.0;
  return a;
}

double sine(double degrees) {
  const double a = wrapped(degrees);
  if (a > 135) return small_sine(180 - a);
  if (a > 45) return small_cosine(a - 90);
  if (a >= -45) return small_sine(a);
  if (a >= -135) return -small_cosine(a + 90);
  return -small_sine(a + 180);
}

double cosine(double degrees) { return sine(degrees + 90.0); }

double direction_of(double y, double x) {
  const double length = std::sqrt(x * x + y * y);
  if (length == 0) return 0;
  const double ax = std::fabs(x) / length;
  const double ay = std::fabs(y) / length;
  // A first guess in the first quadrant, good to four degrees, then Newton's method on the cross product.
  double angle = ay < ax ? 45.0 * ay / ax : 90.0 - 45.0 * ax / ay;
  for (int i = 0; i < 4; ++i) angle += (ay * cosine(angle) - ax * sine(angle)) / kRadian;
  if (x < 0) angle = 180.0 - angle;
  return y < 0 ? -angle : angle;
}

double arc_cosine(double value) {
  const double c = value < -1 ? -1 : (value > 1 ? 1 : value);
  return direction_of(std::sqrt(1 - c * c), c);
}

}  // namespace lanework::figure
