// Reads a figure from the text of its table, for the tests of this folder.
#pragma once

#include <gtest/gtest.h>

#include <string>
#include <vector>

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

struct NamedFigure {
  std::string name;  // 'figure', or the key of the rung whose own it is
  Figure figure;
};

// The drill's figure and the own figures of its rungs.
inline std::vector<NamedFigure> figures_of(const std::string& drill) {
  Faults faults;
  const auto document = parse_toml("drill.toml", drill);
  EXPECT_TRUE(document.ok());
  if (!document) return {};
  TableReader root("drill.toml", &document.value().root, "", faults);
  std::vector<NamedFigure> out = {{"figure", read_figure(root.table("figure"))}};
  TableReader own = root.table("rung_figure");
  for (const std::string& rung : own.keys()) out.push_back({rung, read_figure(own.table(rung))});
  for (const Fault& fault : faults) ADD_FAILURE() << to_line(fault);
  return out;
}

}  // namespace lanework::figure
