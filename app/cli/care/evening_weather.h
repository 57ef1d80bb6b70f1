// The weather of an evening folded into its squad file: a later start, fewer minutes, breaks, less effort, no session.
#pragma once

#include <optional>
#include <string>

#include "core/base/document.h"
#include "core/base/result.h"

namespace lanework::cli {

// squad: the squad file; restrictions: of the evening, which get a row for the whole squad where less effort is asked.
// now: empty for the start of the slot. A squad file whose slot cannot be read is left as it is: it has its own faults.
std::optional<Faults> fold_weather(const std::string& weather_file, const std::string& now,
                                   const std::string& catalogue, Document& squad, Node& restrictions);

}  // namespace lanework::cli
