// The document of entries (docs/formats/entries.md) to entries.
#pragma once

#include <string>
#include <vector>

#include "core/base/document.h"
#include "core/base/result.h"
#include "core/care/entries/entry.h"

namespace lanework::care {

// players: ids of the roster, for somebody who is not there would be protected by nobody; none handed in: not held
// against any. Faults: a kind, place, sign or course that is not known, a number outside 0 to 10, a time without its
// offset, one receipt number for two entries, words for the coach that say what is the matter. All are collected.
Result<std::vector<Entry>> read_entries(const Document& document, const ReturnRules& rules,
                                        const std::vector<std::string>& players);

}  // namespace lanework::care
