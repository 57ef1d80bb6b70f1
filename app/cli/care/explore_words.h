// What the exploration of return rules found, in words and as JSON: figures, and paths to what is broken.
#pragma once

#include <string>

#include "core/base/document.h"
#include "core/care/return_to_sport/return_rules.h"

namespace lanework::cli {

struct ExploreAnswer {
  std::string text;
  Node node;
  bool sound = true;
};

// Every course under every rule set, as for a child and as for an adult.
ExploreAnswer explore_rules(const care::ReturnRules& rules, const std::string& file);

}  // namespace lanework::cli
