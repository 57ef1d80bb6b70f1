// A number with its first and second derivatives in N variables, carried through arithmetic: exact derivatives without
// formulas written out by hand.
#pragma once

#include <array>
#include <cmath>
#include <cstddef>

namespace lanework::evidence {

template <std::size_t N>
struct Jet {
  double value = 0;
  std::array<double, N> first{};
  std::array<double, N*(N + 1) / 2> second{};  // lower triangle, row by row

  Jet() = default;
  Jet(double v) : value(v) {}  // NOLINT(google-explicit-constructor): a constant
  // The variable 'which' at v.
  Jet(double v, std::size_t which) : value(v) { first[which] = 1; }

  static constexpr std::size_t at(std::size_t i, std::size_t j) { return i >= j ? i * (i + 1) / 2 + j : at(j, i); }

  // f(this), where f has these derivatives at the value.
  [[nodiscard]] Jet apply(double f, double slope, double bend) const {
    Jet out(f);
    for (std::size_t i = 0; i < N; ++i) {
      out.first[i] = slope * first[i];
      for (std::size_t j = 0; j <= i; ++j) out.second[at(i, j)] = slope * second[at(i, j)] + bend * first[i] * first[j];
    }
    return out;
  }

  Jet& operator+=(const Jet& b) {
    value += b.value;
    for (std::size_t i = 0; i < first.size(); ++i) first[i] += b.first[i];
    for (std::size_t k = 0; k < second.size(); ++k) second[k] += b.second[k];
    return *this;
  }
  friend Jet operator+(Jet a, const Jet& b) { return a += b; }
  friend Jet operator-(const Jet& a) { return a.apply(-a.value, -1, 0); }
  friend Jet operator-(const Jet& a, const Jet& b) { return a + (-b); }
  friend Jet operator*(const Jet& a, const Jet& b) {
    Jet out(a.value * b.value);
    for (std::size_t i = 0; i < N; ++i) {
      out.first[i] = a.first[i] * b.value + a.value * b.first[i];
      for (std::size_t j = 0; j <= i; ++j)
        out.second[at(i, j)] = a.second[at(i, j)] * b.value + a.first[i] * b.first[j] + a.first[j] * b.first[i] +
                               a.value * b.second[at(i, j)];
    }
    return out;
  }
  friend Jet operator/(const Jet& a, const Jet& b) {
    const double inverse = 1 / b.value;
    return a * b.apply(inverse, -inverse * inverse, 2 * inverse * inverse * inverse);
  }
};

template <std::size_t N>
Jet<N> exp(const Jet<N>& a) {
  const double e = std::exp(a.value);
  return a.apply(e, e, e);
}
template <std::size_t N>
Jet<N> log(const Jet<N>& a) {
  return a.apply(std::log(a.value), 1 / a.value, -1 / (a.value * a.value));
}
template <std::size_t N>
Jet<N> log1p(const Jet<N>& a) {
  const double inverse = 1 / (1 + a.value);
  return a.apply(std::log1p(a.value), inverse, -inverse * inverse);
}
template <std::size_t N>
Jet<N> sqrt(const Jet<N>& a) {
  const double root = std::sqrt(a.value);
  return a.apply(root, 0.5 / root, -0.25 / (root * a.value));
}

}  // namespace lanework::evidence
