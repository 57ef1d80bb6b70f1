// The body regions that injuries are counted by, as the catalogue names them.
#pragma once

#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/release/counts.h"

namespace lanework::cli {

// Of the shipped catalogue where the folder is empty.
Result<std::vector<release::Named>> record_regions(const std::string& catalogue);

}  // namespace lanework::cli
