// One drill checked against a catalogue, as the command line checks the catalogue's files: for a form that says at once
// what is not yet as it should be. docs/formats/door.md.
#pragma once

#include "core/base/document.h"
#include "core/base/result.h"
#include "core/door/hold.h"

namespace lanework::door {

// request: {"drill": its document, "instead_of": the id of the drill whose place it takes, "catalogue" or "held"}. What
// is wrong with the drill is the answer; the faults are the request's.
Result<Node> check_drill(const Document& request, const Held& held);

}  // namespace lanework::door
