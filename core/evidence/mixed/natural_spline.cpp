#include "core/evidence/mixed/natural_spline.h"

#include <algorithm>
#include <cmath>

namespace lanework::evidence {
namespace {

double cube_above(double value, double knot) {
  const double above = std::max(value - knot, 0.0);
  return above * above * above;
}

// Between the two nearest of the sorted values, in proportion.
double quantile(const std::vector<double>& sorted, double share) {
  const double position = share * static_cast<double>(sorted.size() - 1);
  const auto below = static_cast<std::size_t>(position);
  if (below + 1 >= sorted.size()) return sorted.back();
  return sorted[below] + (position - static_cast<double>(below)) * (sorted[below + 1] - sorted[below]);
}

}  // namespace

NaturalSpline::NaturalSpline(std::span<const double> values, int degrees) {
  std::vector<double> sorted(values.begin(), values.end());
  std::sort(sorted.begin(), sorted.end());
  for (int part = 0; part <= degrees; ++part) knots_.push_back(quantile(sorted, part / static_cast<double>(degrees)));
}

bool NaturalSpline::has_knots() const {
  return std::adjacent_find(knots_.begin(), knots_.end(), [](double a, double b) { return !(a < b); }) == knots_.end();
}

void NaturalSpline::row(double value, double* out) const {
  const double first = knots_.front();
  const double last = knots_.back();
  const double last_but_one = knots_[knots_.size() - 2];
  const double width = last - first;
  *out++ = (value - first) / width;
  for (std::size_t j = 0; j + 2 < knots_.size(); ++j) {
    const double bend = cube_above(value, knots_[j]) -
                        cube_above(value, last_but_one) * (last - knots_[j]) / (last - last_but_one) +
                        cube_above(value, last) * (last_but_one - knots_[j]) / (last - last_but_one);
    *out++ = bend / (width * width * width);
  }
}

}  // namespace lanework::evidence
