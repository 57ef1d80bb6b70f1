// The shipped emphasis_reference.toml, for tests.
#pragma once

#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "core/findings/emphasis_reference.h"
#include "tests/findings/small_season.h"

namespace lanework::findings {

inline const std::vector<std::string>& family_keys() {
  static const std::vector<std::string> kKeys = {"pulse-raising", "mobility",      "hip-and-groin",
                                                 "hamstring",     "trunk",         "balance",
                                                 "leg-strength",  "jump-and-land", "run-and-cut"};
  return kKeys;
}

inline std::string shipped_reference_text() {
  std::ifstream in(LANEWORK_SOURCE_DIR "/catalogue/emphasis_reference.toml");
  std::stringstream text;
  text << in.rdbuf();
  return text.str();
}

inline Result<EmphasisReference> reference_from(const std::string& text) {
  return read_emphasis_reference(parse_toml("emphasis_reference.toml", text).value(), record_terms(), family_keys());
}

inline const EmphasisReference& shipped_reference() {
  static const EmphasisReference kReference = reference_from(shipped_reference_text()).value();
  return kReference;
}

}  // namespace lanework::findings
