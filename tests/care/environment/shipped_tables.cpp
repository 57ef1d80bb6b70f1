#include "tests/care/environment/shipped_tables.h"

#include <fstream>
#include <sstream>

namespace lanework::care::environment::test {

std::string shipped_text(const std::string& name) {
  std::ifstream in(std::string(LANEWORK_SOURCE_DIR "/catalogue/care/") + name);
  std::stringstream text;
  text << in.rdbuf();
  return text.str();
}

EnvironmentDocuments shipped_documents() {
  const auto document = [](const char* name) { return parse_toml(name, shipped_text(name)).value(); };
  return {document("heat_bands.toml"), document("cold_bands.toml"), document("air_bands.toml")};
}

const EnvironmentTables& shipped_tables() {
  static const EnvironmentTables tables = read_environment_tables(shipped_documents()).value();
  return tables;
}

const BandTable& heat_table(const std::string& region) { return *shipped_tables().heat.find(region); }

}  // namespace lanework::care::environment::test
