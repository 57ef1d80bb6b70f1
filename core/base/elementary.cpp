#include "core/base/elementary.h"

#include <cmath>
#include <cstdint>
#include <cstring>
#include <limits>

namespace lanework {
namespace {

// ln 2 in two parts: the high part has 32 trailing zero bits, so that k * kLn2High is exact for |k| < 2^20.
constexpr double kLn2High = 0x1.62e42feep-1;
constexpr double kLn2Low = 0x1.a39ef35793c76p-33;
constexpr double kOneOverLn2 = 0x1.71547652b82fep+0;

double from_bits(std::uint64_t bits) {
  double value = 0;
  std::memcpy(&value, &bits, sizeof value);
  return value;
}

std::uint64_t to_bits(double value) {
  std::uint64_t bits = 0;
  std::memcpy(&bits, &value, sizeof bits);
  return bits;
}

// 2^k for -1022 <= k <= 1023.
double power_of_two(int k) { return from_bits(static_cast<std::uint64_t>(k + 1023) << 52U); }

// (exp(r) - 1 - r) / r^2 for |r| <= ln(2)/2: Taylor to r^13, in pairs so that the terms can run side by side.
double exp_tail(double r) {
  const double r2 = r * r;
  const double r4 = r2 * r2;
  const double r8 = r4 * r4;
  const double a = (1.0 / 2 + r * (1.0 / 6)) + r2 * (1.0 / 24 + r * (1.0 / 120));
  const double b = (1.0 / 720 + r * (1.0 / 5040)) + r2 * (1.0 / 40320 + r * (1.0 / 362880));
  const double c = (1.0 / 3628800 + r * (1.0 / 39916800)) + r2 * (1.0 / 479001600 + r * (1.0 / 6227020800));
  return (a + r4 * b) + r8 * c;
}

// 2 (s2/3 + s2^2/5 + ...), the part of log((1+s)/(1-s)) / s beyond 2, for s2 = s^2 <= 0.0295.
double log_tail(double s2) {
  const double s4 = s2 * s2;
  const double s8 = s4 * s4;
  const double a = (2.0 / 3 + s2 * (2.0 / 5)) + s4 * (2.0 / 7 + s2 * (2.0 / 9));
  const double b = (2.0 / 11 + s2 * (2.0 / 13)) + s4 * (2.0 / 15 + s2 * (2.0 / 17));
  const double c = (2.0 / 19 + s2 * (2.0 / 21)) + s4 * (2.0 / 23);
  return s2 * ((a + s8 * b) + s8 * s8 * c);
}

}  // namespace

double elementary_exp(double x) {
  if (x != x) return x;
  if (x > 709.782712893384) return std::numeric_limits<double>::infinity();
  if (x < -745.2) return 0;
  const double scaled = x * kOneOverLn2;
  const int k = static_cast<int>(scaled < 0 ? scaled - 0.5 : scaled + 0.5);
  const double high = x - k * kLn2High;
  const double low = k * kLn2Low;
  const double r = high - low;
  // What rounding took from r is put back: exp(r + c) is close to exp(r) + c.
  const double lost = (high - r) - low;
  const double result = 1.0 + (r + (r * r * exp_tail(r) + lost));
  if (k >= -1022 && k <= 1023) return result * power_of_two(k);
  const int half = k / 2;
  return result * power_of_two(half) * power_of_two(k - half);
}

double elementary_log(double x) {
  if (x != x || x < 0) return std::numeric_limits<double>::quiet_NaN();
  if (x == 0) return -std::numeric_limits<double>::infinity();
  if (x == std::numeric_limits<double>::infinity()) return x;
  int k = 0;
  if (x < 0x1p-1022) {
    x *= 0x1p54;
    k -= 54;
  }
  std::uint64_t bits = to_bits(x);
  k += static_cast<int>(bits >> 52U) - 1023;
  double m = from_bits((bits & 0xFFFFFFFFFFFFFULL) | 0x3FF0000000000000ULL);
  if (m > 1.4142135623730951) {
    m *= 0.5;
    ++k;
  }
  // With s = f / (2 + f): log(1 + f) = 2 s + s tail = f - s (f - tail); f is exact.
  const double f = m - 1.0;
  const double s = f / (2.0 + f);
  const double correction = s * (f - log_tail(s * s));
  return k * kLn2High - ((correction - k * kLn2Low) - f);
}

// NOLINTNEXTLINE(readability-function-size): three rational functions as published, coefficient by coefficient
double normal_quantile(double p) {
  const double q = p - 0.5;
  if (q <= 0.425 && q >= -0.425) {
    const double r = 0.180625 - q * q;
    const double top = ((((((2509.0809287301226727 * r + 33430.575583588128105) * r + 67265.770927008700853) * r +
                           45921.953931549871457) *
                              r +
                          13731.693765509461125) *
                             r +
                         1971.5909503065514427) *
                            r +
                        133.14166789178437745) *
                           r +
                       3.387132872796366608;
    const double bottom = ((((((5226.495278852545925 * r + 28729.085735721942674) * r + 39307.89580009271061) * r +
                              21213.794301586595867) *
                                 r +
                             5394.1960214247511077) *
                                r +
                            687.1870074920579083) *
                               r +
                           42.313330701600911252) *
                              r +
                          1.0;
    return q * top / bottom;
  }
  double r = std::sqrt(-elementary_log(q < 0 ? p : 1.0 - p));
  double z = 0;
  if (r <= 5.0) {
    r -= 1.6;
    const double top =
        ((((((7.7454501427834140764e-4 * r + 0.0227238449892691845833) * r + 0.24178072517745061177) * r +
            1.27045825245236838258) *
               r +
           3.64784832476320460504) *
              r +
          5.7694972214606914055) *
             r +
         4.6303378461565452959) *
            r +
        1.42343711074968357734;
    const double bottom =
        ((((((1.05075007164441684324e-9 * r + 5.475938084995344946e-4) * r + 0.0151986665636164571966) * r +
            0.14810397642748007459) *
               r +
           0.68976733498510000455) *
              r +
          1.6763848301838038494) *
             r +
         2.05319162663775882187) *
            r +
        1.0;
    z = top / bottom;
  } else {
    r -= 5.0;
    const double top =
        ((((((2.01033439929228813265e-7 * r + 2.71155556874348757815e-5) * r + 0.0012426609473880784386) * r +
            0.026532189526576123093) *
               r +
           0.29656057182850489123) *
              r +
          1.7848265399172913358) *
             r +
         5.4637849111641143699) *
            r +
        6.6579046435011037772;
    const double bottom =
        ((((((2.04426310338993978564e-15 * r + 1.4215117583164458887e-7) * r + 1.8463183175100546818e-5) * r +
            7.868691311456132591e-4) *
               r +
           0.0148753612908506148525) *
              r +
          0.13692988092273580531) *
             r +
         0.59983220655588793769) *
            r +
        1.0;
    z = top / bottom;
  }
  return q < 0 ? -z : z;
}

}  // namespace lanework
