#include "tests/report/number_words.h"

#include <array>
#include <cstdio>

namespace lanework::report {

std::string decimals(double value, int places) {
  std::array<char, 400> text{};
  std::snprintf(text.data(), text.size(), "%.*f", places, value);
  return text.data();
}

std::string with_interval(double estimate, double low, double high, int places) {
  return decimals(estimate, places) + " (" + decimals(low, places) + " to " + decimals(high, places) + ")";
}

}  // namespace lanework::report
