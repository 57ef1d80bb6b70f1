// The tables of catalogue/care as they are shipped.
#pragma once

#include <string>

#include "core/care/environment/read_bands.h"

namespace lanework::care::environment::test {

std::string shipped_text(const std::string& name);  // 'heat_bands.toml'
EnvironmentDocuments shipped_documents();
const EnvironmentTables& shipped_tables();
// The table of this region among the three files' own; the test fails where there is none.
const BandTable& heat_table(const std::string& region);

}  // namespace lanework::care::environment::test
