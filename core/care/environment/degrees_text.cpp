#include "core/care/environment/degrees_text.h"

#include <array>
#include <cmath>
#include <cstdio>

namespace lanework::care::environment {

std::string with_one_decimal(double value) {
  const double rounded = std::round(value * 10) / 10;
  std::array<char, 32> text{};
  std::snprintf(text.data(), text.size(), "%.1f", rounded == 0 ? 0.0 : rounded);
  return text.data();
}

std::string to_text(Celsius t) { return with_one_decimal(t.degrees) + " °C"; }
std::string to_text(Fahrenheit t) { return with_one_decimal(t.degrees) + " °F"; }
std::string in_both(Celsius t) { return to_text(t) + " (" + to_text(to_fahrenheit(t)) + ")"; }

}  // namespace lanework::care::environment
