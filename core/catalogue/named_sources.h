// Sources that a document names, for tables whose own readers do not see sources.toml.
#pragma once

#include <vector>

#include "core/base/document.h"
#include "core/base/result.h"
#include "core/catalogue/catalogue.h"

namespace lanework::catalogue {

// A fault for each text under 'source' or 'sources', however deep, that is no key of the rows of sources.toml. What is
// no text is left to the document's reader.
void check_named_sources(const Document& document, const std::vector<Source>& sources, Faults& faults);

}  // namespace lanework::catalogue
