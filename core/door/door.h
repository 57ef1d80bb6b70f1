// The door: one JSON request in, one JSON answer out. The command line, the server and the phone all use
// it, natively and as WebAssembly, and get the same bytes.
#pragma once

#include <string>
#include <string_view>

#include "core/base/document.h"
#include "core/base/result.h"
#include "core/door/hold.h"

namespace lanework::door {

// Never throws. Requests: 'plan', 'slip', 'figure', 'check-drill', and 'hold', which keeps a catalogue for those after
// it. What cannot be understood gives
// {"answer": "faults", "faults": [{"code", "file", "line", "field", "found", "expected", "hint", "sentence"}]}.
std::string run(std::string_view request, Held& held);
// A door that holds nothing, before and after.
std::string run(std::string_view request);

Node faults_node(const Faults& faults);

}  // namespace lanework::door
