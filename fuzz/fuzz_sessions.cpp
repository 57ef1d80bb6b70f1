// Any bytes as sessions of the demo club as they happened: rows that keep their promises, or clear faults.
#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <set>
#include <string>
#include <tuple>

#include "app/read/club_folder.h"
#include "app/read/read_sessions.h"
#include "fuzz/promise.h"

namespace {

using lanework::Date;
using lanework::club::Happened;
using lanework::club::SessionRow;
using lanework::fuzz::promise;

struct Demo {
  lanework::read::ClubFolder folder;
  lanework::club::Allocation allocation;
};

const Demo& demo() {
  static const Demo kDemo = [] {
    const std::filesystem::path root = LANEWORK_SOURCE_DIR;
    Demo out{lanework::read::read_club_folder((root / "demo/quillmere").string(), (root / "catalogue").string()), {}};
    const lanework::club::Settings& settings = out.folder.club.settings;
    out.allocation = lanework::club::allocate(out.folder.club, settings.block_from, settings.block_weeks);
    return out;
  }();
  return kDemo;
}

void check_rows(const std::vector<SessionRow>& rows, Date today) {
  promise(rows.size() <= lanework::club::kMostSessionRows, "no more rows than are read");
  std::set<std::tuple<std::size_t, std::string, int>> sessions;
  for (const SessionRow& row : rows) {
    promise(row.squad < demo().folder.club.squads.size(), "a row is of a squad of the club");
    promise(row.date <= today, "nothing has happened that is still to come");
    promise(sessions.insert({row.squad, lanework::to_iso(row.date), row.start.minutes}).second,
            "a session has one row");
    promise(!row.minutes || (*row.minutes >= 1 && *row.minutes <= 24 * 60), "minutes are there and of one day");
    promise(row.happened != Happened::kMissed || !row.minutes, "a missed session has no minutes");
    std::set<std::string> drills;
    for (const std::string& drill : row.left_out) promise(drills.insert(drill).second, "a drill is left out once");
    for (const char c : row.note) promise(static_cast<unsigned char>(c) >= 0x20, "a note is one line");
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const Date today = *lanework::make_date(2026, 12, 4);
  const std::string bytes(data, data + size);
  const auto rows = lanework::read::read_sessions("sessions.csv", bytes, demo().folder.club, demo().allocation, today);
  if (rows) {
    check_rows(rows.value(), today);
  } else {
    lanework::fuzz::promise_clear_faults(rows.faults(), "sessions.csv");
  }
  return 0;
}
