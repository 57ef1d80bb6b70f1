// A dose as people read it: '2 × 20 s a side'.
#pragma once

#include <string>

#include "core/check/matter.h"

namespace lanework::check {

std::string dose_words(const Drill& drill, const Step& step);

}  // namespace lanework::check
