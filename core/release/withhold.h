// Which rows of a release are not shown: the small ones, and as few others as keep these from being worked out.
#pragma once

#include <string>
#include <vector>

#include "core/release/release.h"

namespace lanework::release {

// Fills in what is hidden. Where hiding rows does not do, nothing is said of injuries at all. What was tried, in
// sentences.
std::vector<std::string> withhold(Release& release, const std::vector<Release>& earlier);

}  // namespace lanework::release
