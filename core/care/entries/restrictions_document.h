// What stands as the restrictions document that the planner's squad file names (docs/formats/squad.md): instructions,
// areas and kinds; no reason, no course, no entry.
#pragma once

#include <optional>
#include <vector>

#include "core/base/document.h"
#include "core/care/entries/standing.h"

namespace lanework::care {

// people::read_restrictions reads it back. An instruction in which a private word is found is replaced by one made from
// the kinds of stress.
Node restrictions_document(const std::vector<Standing>& standing, const std::optional<ReceiptTime>& as_known);

}  // namespace lanework::care
