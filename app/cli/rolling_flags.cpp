#include "app/cli/rolling_flags.h"

#include <CLI/CLI.hpp>
#include <utility>

#include "app/cli/today.h"
#include "app/read/files.h"
#include "app/read/read_sessions.h"

namespace lanework::cli {

void add_rolling_flags(CLI::App& command, RollingFlags& flags) {
  command.add_option("--sessions", flags.sessions,
                     "sessions as they happened, a spreadsheet saved as text (docs/formats/sessions.md)");
  command.add_option("--today", flags.today, "the day to plan on from, such as 2026-12-01, if not today");
}

Result<door::SoFar> read_so_far(const RollingFlags& flags, const club::Club& club, const club::Allocation& allocation) {
  const Result<Date> day = day_or_today("--today", flags.today);
  if (!day) return day.faults();
  door::SoFar out;
  out.today = day.value();
  if (flags.sessions.empty()) return out;
  const auto bytes = read::read_file(flags.sessions, {"", 0, 0, "--sessions"});
  if (!bytes) return bytes.faults();
  auto rows = read::read_sessions(flags.sessions, bytes.value(), club, allocation, out.today);
  if (!rows) return rows.faults();
  out.rows = std::move(rows).value();
  return out;
}

}  // namespace lanework::cli
