// Numbers of the weather as people read them.
#pragma once

#include <string>

#include "core/care/environment/units.h"

namespace lanework::care::environment {

std::string with_one_decimal(double value);  // '32.6'; never '-0.0'
std::string to_text(Celsius t);              // '32.6 °C'
std::string to_text(Fahrenheit t);           // '90.7 °F'
std::string in_both(Celsius t);              // '32.6 °C (90.7 °F)'

}  // namespace lanework::care::environment
