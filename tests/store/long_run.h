// Whether this is the long run (./test --long), which asks twenty times as much of every property.
#pragma once

#include <cstdlib>
#include <string>

namespace lanework::store::test {

inline bool is_long_run() {
  const char* wished = std::getenv("RC_PARAMS");
  return wished != nullptr && std::string(wished).find("max_success=2000") != std::string::npos;
}

}  // namespace lanework::store::test
