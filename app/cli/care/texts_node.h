// A list of texts for a JSON answer.
#pragma once

#include <string>
#include <vector>

#include "core/base/document.h"

namespace lanework::cli {

inline Node texts_node(const std::vector<std::string>& texts) {
  Node out = Node::make_array();
  for (const std::string& text : texts) out.items.push_back(Node::make_text(text));
  return out;
}

}  // namespace lanework::cli
