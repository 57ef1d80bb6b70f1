// A release as JSON: what everybody who may read it gets, and what was counted for it, which is for the audit alone.
// docs/formats/release.md.
#pragma once

#include "core/base/document.h"
#include "core/base/result.h"
#include "core/release/release.h"

namespace lanework::release {

Node shown_node(const Release& release);
Node counted_node(const Release& release);

// What is hidden is read from what was shown. Faults: a key that is missing or of another type; a number that was shown
// and is not what was counted.
Result<Release> read_release(const Document& shown, const Document& counted);

}  // namespace lanework::release
