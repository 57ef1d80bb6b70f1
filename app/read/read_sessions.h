// A file of sessions as they happened, as a spreadsheet exported it, to rows. docs/formats/sessions.md says what is
// read.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/date.h"
#include "core/base/result.h"
#include "core/club/session_rows.h"

namespace lanework::read {

// Every fault of the file is collected. The club and its allocation are those of the block.
Result<std::vector<club::SessionRow>> read_sessions(const std::string& file, std::string_view bytes,
                                                    const club::Club& club, const club::Allocation& allocation,
                                                    Date today);

}  // namespace lanework::read
