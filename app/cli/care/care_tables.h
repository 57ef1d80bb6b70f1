// Every table of the catalogue's care/, each read as the command that lives by it reads it.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/catalogue/catalogue.h"

namespace lanework::cli {

// How many there are. Faults of all together: also a source that sources.toml lacks, a table that is not there, and a
// TOML file in care/ that nothing reads.
Result<std::size_t> check_care_tables(const std::string& catalogue_folder,
                                      const std::vector<catalogue::Source>& sources);

}  // namespace lanework::cli
