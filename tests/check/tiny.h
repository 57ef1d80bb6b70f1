// A tiny catalogue, an evening and a plan worked by hand: tiny_request.json, tiny_answer.json. The working
// stands in by_hand_test.cpp.
#pragma once

#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>

#include "core/base/document.h"

namespace lanework::check::test {

inline Node tiny(const std::string& file) {
  std::ifstream in(std::string(LANEWORK_SOURCE_DIR) + "/tests/check/" + file, std::ios::binary);
  const std::string text((std::istreambuf_iterator<char>(in)), std::istreambuf_iterator<char>());
  auto document = parse_json(file, text);
  if (!document) throw std::runtime_error(to_line(document.faults().front()));
  return document.value().root;
}
inline Node tiny_request() { return tiny("tiny_request.json"); }
inline Node tiny_answer() { return tiny("tiny_answer.json"); }

}  // namespace lanework::check::test
