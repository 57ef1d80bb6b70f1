// What a comparison's interval allows to be said, and nothing more.
#pragma once

#include <string>

#include "core/evidence/interval.h"

namespace lanework::cli {

// Of the limits of a ratio, one line.
std::string chance_sentence(const evidence::Interval& limits);

}  // namespace lanework::cli
