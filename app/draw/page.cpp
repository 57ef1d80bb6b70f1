#include "app/draw/page.h"

namespace lanework::draw {
namespace {

constexpr double kTolerance = 0.001;

}  // namespace

bool overlap(const Box& a, const Box& b) {
  return a.x + kTolerance < b.right() && b.x + kTolerance < a.right() && a.y + kTolerance < b.bottom() &&
         b.y + kTolerance < a.bottom();
}

bool inside(const Box& inner, const Box& outer) {
  return inner.x >= outer.x - kTolerance && inner.y >= outer.y - kTolerance &&
         inner.right() <= outer.right() + kTolerance && inner.bottom() <= outer.bottom() + kTolerance;
}

}  // namespace lanework::draw
