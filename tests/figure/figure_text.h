// Reads a figure from the text of its table, for the tests of this folder.
#pragma once

#include <gtest/gtest.h>

#include <string>

#include "core/base/document.h"
#include "core/figure/figure.h"

namespace lanework::figure {

inline Figure figure_from(const std::string& text, Faults& faults) {
  const auto document = parse_toml("drill.toml", text);
  EXPECT_TRUE(document.ok());
  if (!document) return {};
  TableReader root("drill.toml", &document.value().root, "", faults);
  return read_figure(root.table("figure"));
}

inline Figure sound_figure(const std::string& text) {
  Faults faults;
  Figure figure = figure_from(text, faults);
  for (const Fault& fault : faults) ADD_FAILURE() << to_line(fault);
  return figure;
}

}  // namespace lanework::figure
