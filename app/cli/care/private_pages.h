// Pages that name a child: one PDF, readable by its owner alone, under a name that tells nothing.
#pragma once

#include <string>

#include "app/draw/page.h"
#include "core/base/result.h"

namespace lanework::cli {

// Writes FOLDER/STEM.pdf and gives its path.
Result<std::string> write_private_pages(const std::string& stem, const draw::Pages& pages, const std::string& folder);

}  // namespace lanework::cli
