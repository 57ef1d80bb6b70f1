#include "app/cli/today.h"

#include <chrono>

namespace lanework::cli {

Date today() {
  const auto now = std::chrono::floor<std::chrono::days>(std::chrono::system_clock::now());
  return Date{static_cast<int>(now.time_since_epoch().count())};
}

Result<Date> day_or_today(const char* flag, const std::string& stated) {
  if (stated.empty()) return today();
  const std::optional<Date> day = parse_iso_date(stated);
  if (!day) return Fault{FaultCode::kBadDate, {"", 0, 0, flag}, quote(stated), "a date such as 2026-12-01", {}};
  return *day;
}

}  // namespace lanework::cli
