// Gauss and Hermite's rule: the integral of exp(-t^2) f(t) as a sum over a few points.
#pragma once

#include <vector>

namespace lanework::evidence {

struct Quadrature {
  std::vector<double> points;
  std::vector<double> log_weights;  // of the weight times exp(point^2)
};

// By the eigenvalues of the rule's tridiagonal matrix (Golub GH, Welsch JH, Math Comp 1969, doi 10.2307/2004418).
// REQUIRES: 1 <= count <= 60.
Quadrature gauss_hermite(int count);

}  // namespace lanework::evidence
