// What really happened, as leads keep it in spreadsheets; every mistake is one clear line.
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <filesystem>

#include "app/read/club_folder.h"
#include "app/read/read_sessions.h"

namespace lanework::read {
namespace {

struct DemoBlock {
  ClubFolder folder;
  club::Allocation allocation;
};

const DemoBlock& demo() {
  static const DemoBlock kDemo = [] {
    const std::filesystem::path root = LANEWORK_SOURCE_DIR;
    DemoBlock out{read_club_folder((root / "demo/quillmere").string(), (root / "catalogue").string()), {}};
    const club::Settings& settings = out.folder.club.settings;
    out.allocation = club::allocate(out.folder.club, settings.block_from, settings.block_weeks);
    return out;
  }();
  return kDemo;
}

Result<std::vector<club::SessionRow>> read(const std::string& text, const std::string& today = "2026-12-04") {
  return read_sessions("sessions.csv", text, demo().folder.club, demo().allocation, *parse_iso_date(today));
}

std::vector<club::SessionRow> rows_of(const std::string& text, const std::string& today = "2026-12-04") {
  auto rows = read(text, today);
  if (rows) return std::move(rows).value();
  for (const Fault& fault : rows.faults()) ADD_FAILURE() << to_line(fault);
  return {};
}

std::string fault_of(const std::string& text, const std::string& today = "2026-12-04") {
  const auto rows = read(text, today);
  if (rows) return "no fault";
  std::string out;
  for (const Fault& fault : rows.faults()) out += (out.empty() ? "" : "\n") + to_line(fault);
  return out;
}

TEST(Sessions, ReadsEveryColumn) {
  const auto rows = rows_of(
      "Quillmere Juniors;;;;;;;\r\n"
      "Squad;Date;Start;Happened;Minutes;Did it;Left out;Note\r\n"
      "u13-kestrels;2026-11-24;18:00;held;;half;Squat; wind\r\n"
      "Under-13 Kestrels;26.11.2026;18:00:00;Cut short;12 min;;\"Plant and cut;side-plank\";\r\n"
      ";;;;;;;\r\n"
      "U13-KESTRELS;28/11/2026;;missed;;;;frost\r\n");
  ASSERT_EQ(rows.size(), 3U);
  EXPECT_EQ(demo().folder.club.squads[rows[0].squad].id, "u13-kestrels");
  EXPECT_EQ(to_iso(rows[0].date), "2026-11-24");
  EXPECT_EQ(to_text(rows[0].start), "18:00");
  EXPECT_EQ(rows[0].did_it, club::DidIt::kHalf);
  EXPECT_EQ(rows[0].left_out, std::vector<std::string>{"squat"});
  EXPECT_EQ(rows[0].note, "wind");
  EXPECT_EQ(rows[0].place.line, 3);
  EXPECT_EQ(rows[1].happened, club::Happened::kCutShort);
  EXPECT_EQ(rows[1].minutes, 12);
  EXPECT_EQ(rows[1].left_out, (std::vector<std::string>{"plant-and-cut", "side-plank"}));
  EXPECT_EQ(rows[2].happened, club::Happened::kMissed);
  EXPECT_EQ(to_iso(rows[2].date), "2026-11-28");
}

TEST(Sessions, ThreeColumnsAreEnough) {
  const auto rows = rows_of("squad,date,happened\nu13-kestrels,2026-11-24,held\n");
  ASSERT_EQ(rows.size(), 1U);
  EXPECT_EQ(rows[0].did_it, club::DidIt::kMost);
  EXPECT_FALSE(rows[0].minutes);
  EXPECT_TRUE(rows_of("squad,date,happened\n").empty());
}

// 3/12 and 1/12 could be days of March and January: only December is in the block.
TEST(Sessions, TheBlockTellsWhetherTheDayStandsFirst) {
  const auto rows = rows_of("squad,date,happened\nu13-kestrels,01/12/2026,held\nu13-kestrels,03/12/2026,held\n");
  ASSERT_EQ(rows.size(), 2U);
  EXPECT_EQ(to_iso(rows[0].date), "2026-12-01");
  EXPECT_EQ(to_iso(rows[1].date), "2026-12-03");
}

TEST(Sessions, SpreadsheetsHabits) {
  EXPECT_EQ(rows_of("\xEF\xBB\xBFTeam\tDay\tStatus\nu13-kestrels\t24 Nov 2026\tRained off\n").size(), 1U);
  EXPECT_EQ(rows_of("sep=;\r\nTeam;Day;Status\r\nu13-kestrels;46350;yes\r\n").size(), 1U);  // a cell without a format
  std::string utf16("\xFF\xFE", 2);
  for (const char c : std::string("squad,date,happened\nu13-kestrels,2026-11-24,held\n")) utf16 += {c, '\0'};
  EXPECT_EQ(rows_of(utf16).size(), 1U);
}

TEST(Sessions, EveryMistakeIsOneLine) {
  const std::string head = "squad,date,start,happened,minutes,did it,left out\n";
  EXPECT_EQ(fault_of(head + "u13-owls,2026-11-24,,held,,,\n"),
            "sessions.csv:2: squad: found 'u13-owls', expected the id or the name of a squad of the club");
  EXPECT_EQ(fault_of(head + "u13-kestrels,2026-11-25,,held,,,\n"),
            "sessions.csv:2: date: found '2026-11-25', expected a day with a session of u13-kestrels");
  EXPECT_EQ(fault_of(head + "u13-kestrels,2026-12-22,,held,,,\n", "2026-12-30"),
            "sessions.csv:2: date: found '2026-12-22', expected a day with a session of u13-kestrels; it has none that "
            "day: Winter break");
  EXPECT_EQ(fault_of(head + "u13-kestrels,2026-12-08,,held,,,\n"),
            "sessions.csv:2: date: found '2026-12-08', expected a day of the block that is not to come: 2026-11-23 to "
            "2026-12-04");
  EXPECT_EQ(fault_of(head + "u13-kestrels,2026-11-19,,held,,,\n"),
            "sessions.csv:2: date: found '2026-11-19', expected a day of the block that is not to come: 2026-11-23 to "
            "2026-12-04");
  EXPECT_EQ(fault_of(head + "u13-kestrels,2026-11-31,,held,,,\n"),
            "sessions.csv:2: date: found '2026-11-31', expected a date that exists, such as 2026-11-24");
  EXPECT_EQ(fault_of(head + "u13-kestrels,soon,,held,,,\n"),
            "sessions.csv:2: date: found 'soon', expected a date such as 2026-11-24");
  EXPECT_EQ(fault_of(head + "u13-kestrels,,,held,,,\n"),
            "sessions.csv:2: date: found an empty cell, expected the day of the session, such as 2026-11-24");
  EXPECT_EQ(fault_of(head + "u13-kestrels,2026-11-24,19:00,held,,,\n"),
            "sessions.csv:2: start: found '19:00', expected the start of a session that day: 18:00");
  EXPECT_EQ(fault_of(head + "u13-kestrels,2026-11-24,late,held,,,\n"),
            "sessions.csv:2: start: found 'late', expected a time of day such as 18:00, or nothing");
  EXPECT_EQ(fault_of(head + "u13-kestrels,2026-11-24,18:00:00+01:00,held,,,\n"),
            "sessions.csv:2: start: found '18:00:00+01:00', expected a time of day such as 18:00, or nothing");
  EXPECT_EQ(fault_of(head + "u13-kestrels,2026-11-24,,perhaps,,,\n"),
            "sessions.csv:2: happened: found 'perhaps', expected 'held', 'missed' or 'cut short'");
  EXPECT_EQ(fault_of(head + "u13-kestrels,2026-11-24,,cut short,25,,\n"),
            "sessions.csv:2: minutes: found '25', expected a whole number from 1 to 20, the minutes of the slot");
  EXPECT_EQ(fault_of(head + "u13-kestrels,2026-11-24,,cut short,-5,,\n"),
            "sessions.csv:2: minutes: found '-5', expected a whole number from 1 to 20, the minutes of the slot");
  EXPECT_EQ(fault_of(head + "u13-kestrels,2026-11-24,,missed,10,,\n"),
            "sessions.csv:2: minutes: found '10', expected nothing: the session is told as missed");
  EXPECT_EQ(fault_of(head + "u13-kestrels,2026-11-24,,held,,lots,\n"),
            "sessions.csv:2: did it: found 'lots', expected 'most', 'half' or 'few', or nothing");
  EXPECT_EQ(fault_of(head + "u13-kestrels,2026-11-24,,held,,,squat; moon walk\n"),
            "sessions.csv:2: left out: found 'moon walk', expected names or ids of drills, ';' between them");
  EXPECT_EQ(fault_of(head + "u13-kestrels,2026-11-24,,held,,,\nUnder-13 Kestrels,24.11.2026,,missed,,,\n"),
            "sessions.csv:3: date: found '24.11.2026', expected one row a session, and line 2 has it already");
  EXPECT_EQ(fault_of("squad,date\nu13-kestrels,2026-11-24\n"),
            "sessions.csv:1: found no column 'happened', expected columns 'squad', 'date' and 'happened' (see "
            "docs/formats/sessions.md for the headings that are read)");
  EXPECT_NE(fault_of("Monday,rain\n").find("no heading row that we know"), std::string::npos);
  EXPECT_NE(fault_of(""), "no fault");
}

// Bytes changed by chance: rows or faults, never a crash; and the same text twice is the same.
TEST(Sessions, AnyBytesAreRowsOrFaults) {
  EXPECT_TRUE(rc::check([](std::uint32_t seed) {
    std::string text =
        "squad;date;start;happened;minutes;did it;left out;note\n"
        "u13-kestrels;2026-11-24;18:00;cut short;12;half;\"squat;side-plank\";x\n"
        "u12-dunnocks;24.11.2026;;held;;few;;\n";
    for (int i = 0; i < 6; ++i) {
      seed = seed * 1664525U + 1013904223U;
      const std::size_t at = (seed >> 8U) % text.size();
      if ((seed & 1U) != 0) {
        text[at] = static_cast<char>(seed >> 24U);
      } else {
        text.erase(at, 1 + (seed >> 4U) % 3);
      }
    }
    RC_ASSERT(fault_of(text) == fault_of(text));
  }));
}

}  // namespace
}  // namespace lanework::read
