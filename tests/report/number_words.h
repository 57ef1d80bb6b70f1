// Numbers of the sample pages as a report would print them.
#pragma once

#include <string>

namespace lanework::report {

// With so many decimals: '3.40'.
std::string decimals(double value, int places);
// '3.4 (2.1 to 5.6)'
std::string with_interval(double estimate, double low, double high, int places);

}  // namespace lanework::report
