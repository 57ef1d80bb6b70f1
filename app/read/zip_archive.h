// Some files as the bytes of one ZIP. The same files give the same bytes: no clock is in them.
#pragma once

#include <string>
#include <vector>

#include "core/base/result.h"

namespace lanework::read {

struct ArchivedFile {
  std::string name;
  std::string bytes;
};

// Faults: a name that cannot stand in a ZIP; no memory.
Result<std::string> zip_of(const std::vector<ArchivedFile>& files);

}  // namespace lanework::read
