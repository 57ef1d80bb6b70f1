// A whole folder at once, or none of it.
#pragma once

#include <functional>
#include <map>
#include <string>

#include "core/base/result.h"

namespace lanework::read {

// files: bytes by name inside the folder, which may lie in folders of their own. Writes them under a temporary name
// beside the folder, asks 'judge' about what stands there, and renames. Empty when it is done; after a fault, the
// judge's included, nothing is left. The folder must not exist yet.
Faults write_folder_atomically(const std::string& folder, const std::map<std::string, std::string>& files,
                               const std::function<Faults(const std::string& temporary)>& judge);

}  // namespace lanework::read
