// Derivatives carried along, against differences.
#include "core/evidence/mixed/jet.h"

#include <gtest/gtest.h>

#include "core/evidence/mixed/squad_term.h"

namespace lanework::evidence {
namespace {

// Of any function of two variables: its jet at a point against central differences of its values and first derivatives.
template <class Function>
void expect_derivatives(const Function& function, double x, double y, double tolerance) {
  constexpr double kStep = 1e-5;
  const Jet<2> here = function(x, y);
  const double by_x = (function(x + kStep, y).value - function(x - kStep, y).value) / (2 * kStep);
  const double by_y = (function(x, y + kStep).value - function(x, y - kStep).value) / (2 * kStep);
  EXPECT_NEAR(here.first[0], by_x, tolerance * std::max(1.0, std::abs(by_x))) << x << ' ' << y;
  EXPECT_NEAR(here.first[1], by_y, tolerance * std::max(1.0, std::abs(by_y))) << x << ' ' << y;
  for (std::size_t i = 0; i < 2; ++i) {
    const double bend_x = (function(x + kStep, y).first[i] - function(x - kStep, y).first[i]) / (2 * kStep);
    const double bend_y = (function(x, y + kStep).first[i] - function(x, y - kStep).first[i]) / (2 * kStep);
    EXPECT_NEAR(here.second[Jet<2>::at(i, 0)], bend_x, tolerance * std::max(1.0, std::abs(bend_x))) << x << ' ' << y;
    EXPECT_NEAR(here.second[Jet<2>::at(i, 1)], bend_y, tolerance * std::max(1.0, std::abs(bend_y))) << x << ' ' << y;
  }
}

TEST(Jet, Arithmetic) {
  const auto function = [](double x, double y) {
    const Jet<2> a(x, 0);
    const Jet<2> b(y, 1);
    return log(a * a + b) / sqrt(b) - exp(a * b) * 0.5 + log1p(a) * (a - b);
  };
  for (const double x : {0.3, 1.0, 2.1}) {
    for (const double y : {0.2, 0.9, 1.7}) expect_derivatives(function, x, y, 1e-7);
  }
}

// The mode moves with the parameters; few events, many, and none; effects from hardly any to large ones.
TEST(SquadTerm, DerivativesThroughTheMode) {
  for (const int points : {1, 9, 25}) {
    const Quadrature rule = gauss_hermite(points);
    for (const double events : {0.0, 1.0, 7.0, 240.0}) {
      for (const double log_expected : {-3.0, 0.5, 4.0}) {
        for (const double log_deviation : {-4.0, -1.3, 0.6}) {
          expect_derivatives([&](double x, double y) { return squad_term(events, x, y, rule).log_likelihood; },
                             log_expected, log_deviation, 2e-6);
        }
      }
    }
  }
}

// With many points the rule is the integral: by the trapezoid rule on a fine grid.
TEST(SquadTerm, IsTheIntegral) {
  for (const double events : {0.0, 2.0, 15.0}) {
    for (const double log_deviation : {-1.5, -0.2}) {
      constexpr double kLogExpected = 1.1;
      const double deviation = std::exp(log_deviation);
      const double expected = std::exp(kLogExpected);
      double sum = 0;
      constexpr double kStep = 1e-3;
      for (double z = -12 * deviation; z <= 12 * deviation; z += kStep * deviation) {
        const double height = events * z - expected * std::exp(z) - z * z / (2 * deviation * deviation);
        sum += std::exp(height) * kStep / std::sqrt(2 * M_PI);
      }
      const double found = squad_term(events, kLogExpected, log_deviation, gauss_hermite(40)).log_likelihood.value;
      EXPECT_NEAR(found, std::log(sum), 1e-9) << events << ' ' << log_deviation;
    }
  }
}

TEST(Quadrature, IntegratesPolynomialsExactly) {
  for (const int points : {1, 2, 5, 25, 60}) {
    const Quadrature rule = gauss_hermite(points);
    double one = 0;
    double square = 0;
    double fourth = 0;
    for (std::size_t k = 0; k < rule.points.size(); ++k) {
      const double t = rule.points[k];
      const double weight = std::exp(rule.log_weights[k] - t * t);
      one += weight;
      square += weight * t * t;
      fourth += weight * t * t * t * t;
    }
    EXPECT_NEAR(one, std::sqrt(M_PI), 1e-13);
    // Exact up to the power of twice the points, less one.
    EXPECT_NEAR(square, points > 1 ? std::sqrt(M_PI) / 2 : 0, 1e-13);
    EXPECT_NEAR(fourth, points > 2 ? 3 * std::sqrt(M_PI) / 4 : fourth, 1e-13);
  }
}

}  // namespace
}  // namespace lanework::evidence
