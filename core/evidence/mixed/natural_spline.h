// A smooth curve of a number, straight beyond its first and last knots: the natural cubic spline, in the basis of
// truncated cubes (Stone CJ, Koo CY 1985, as in Harrell FE, Regression Modeling Strategies; from memory).
#pragma once

#include <span>
#include <vector>

namespace lanework::evidence {

class NaturalSpline {
 public:
  // Knots at the least and the greatest value and at the quantiles between that cut the values into as many equal parts
  // as the curve has degrees of freedom. REQUIRES: degrees >= 1; as many different knots as that gives (has_knots).
  NaturalSpline(std::span<const double> values, int degrees);

  [[nodiscard]] bool has_knots() const;  // all knots are different
  [[nodiscard]] std::size_t columns() const { return knots_.size() - 1; }
  // One row of the design, [column]: the value itself, from 0 at the first knot to 1 at the last, then the bends.
  void row(double value, double* out) const;
  [[nodiscard]] const std::vector<double>& knots() const { return knots_; }

 private:
  std::vector<double> knots_;
};

}  // namespace lanework::evidence
