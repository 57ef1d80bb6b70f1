// Drawn pages to files: each page as PDF, SVG and PNG, written whole or not at all.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/draw/card.h"
#include "core/base/result.h"

namespace lanework::cli {

struct PageFile {
  std::string name;
  std::string bytes;
};

struct PageFormats {
  bool pdf = true;
  bool svg = true;
  bool png = true;
};

// Adds STEM.pdf and, a side each, STEM-side-1.svg and STEM-side-1.png.
std::optional<Faults> add_page_files(const std::string& stem, const draw::Pages& pages, const PageFormats& formats,
                                     std::vector<PageFile>& files);

// Makes the folder where it is not there; gives the paths written, in order.
Result<std::vector<std::string>> write_page_files(const std::vector<PageFile>& files, const std::string& folder);

// 'a4' or 'letter'.
draw::Paper paper_named(const std::string& name);

}  // namespace lanework::cli
