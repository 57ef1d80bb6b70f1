// The day by the machine's clock (in UTC), for commands that are not told one: core never reads a clock.
#pragma once

#include "core/base/date.h"
#include "core/base/result.h"

namespace lanework::cli {

Date today();

// The day of a flag, such as 2026-12-01; today where it is empty.
Result<Date> day_or_today(const char* flag, const std::string& stated);

}  // namespace lanework::cli
