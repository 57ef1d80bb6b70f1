// Sums of hours straight from the bytes: those of the reader of sheets, however the bytes are cut, and a clear line for
// every row that cannot be summed.
#include "core/records/hours_stream.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>

#include "core/records/write_season.h"
#include "tests/records/generated_season.h"
#include "tests/records/record_files.h"

namespace lanework::records::test {
namespace {

using Lines = std::vector<std::string>;

Result<WeekTable> sum(std::string_view text, const std::vector<SquadRecord>& squads, std::size_t piece = 1U << 16U,
                      const Period& period = season_2026()) {
  HoursStream stream("hours.csv", squads, period);
  for (; !text.empty(); text.remove_prefix(std::min(piece, text.size()))) stream.take(text.substr(0, piece));
  return std::move(stream).finish();
}

Lines faults_of(const std::string& rows, const std::vector<SquadRecord>& squads) {
  const auto table = sum(canonical_hours_heading() + "\n" + rows, squads);
  Lines lines;
  for (const Fault& fault : table ? Faults{} : table.faults()) lines.push_back(to_line(fault));
  return lines;
}

std::vector<SquadRecord> two_squads() { return read_well({}).season.squads; }

TEST(HoursStream, SumsAsTheReaderOfSheetsDoes) {
  EXPECT_TRUE(rc::check([](std::uint64_t seed) {
    const SeasonSize size{*rc::gen::inRange(1, 9), *rc::gen::inRange(0, 80), 0, 0};
    const Season season = generated_season(seed, size);
    const CanonicalFiles files = canonical_files(season, shipped_terms());
    const ReadSeason read_again = read({files.squads, files.hours, files.injuries, {}, {}});
    const std::size_t piece = *rc::gen::inRange<std::size_t>(1, 200);
    const auto table = sum(files.hours, read_again.season.squads, piece);
    RC_ASSERT(table.ok());
    RC_ASSERT(table.value() == hours_by_week(read_again.season));
    RC_ASSERT(table.value().rows == size.exposures);
  }));
}

TEST(HoursStream, CountsRowsOutsideThePeriod) {
  const Period short_one = make_period(day("2026-11-02"), day("2026-11-29"), day("2027-06-30")).value();
  const std::string text =
      canonical_hours_heading() +
      "\nu13-kestrels,2026-11-01,training,,,,,,,,,\r\nu13-kestrels,2026-11-02,training,,,,,,,,,\r\n"
      "\r\nu16-swifts,2026-11-30,match,,,,,,,,,";
  const auto table = sum(text, two_squads(), 7, short_one);
  ASSERT_TRUE(table.ok());
  EXPECT_EQ(table.value().rows, 1);
  EXPECT_EQ(table.value().rows_outside_period, 2);
  EXPECT_EQ(table.value().at(0, 0, Setting::kTraining).hours, PlayerMinutes(75 * 16));
  EXPECT_EQ(table.value().at(0, 0, Setting::kTraining).warm_ups[kWarmUps], 1);
}

TEST(HoursStream, EveryFaultyRowIsOneLine) {
  std::vector<SquadRecord> squads = two_squads();
  squads[1].training_minutes.reset();
  squads[1].on_the_field.reset();
  const Lines lines = faults_of(
      "u14,2026-11-24,training,,,,,,,,,\n"
      "u13-kestrels,2026-11-31,training,,,,,,,,,\n"
      "u13-kestrels,24.11.2026,training,,,,,,,,,\n"
      "u13-kestrels,2027-07-01,training,,,,,,,,,\n"
      "u13-kestrels,2026-11-24,Training,,,,,,,,,\n"
      "u13-kestrels,2026-11-24,training,1441,,,,,,,,\n"
      "u13-kestrels,2026-11-24,training,,-1,,,,,,,\n"
      "u13-kestrels,2026-11-24,training,,,4801,,,,,,\n"
      "u13-kestrels,2026-11-24,training,,14,,P1,,,,,\n"
      "u13-kestrels,2026-11-24,training,,,,,all,,,,\n"
      "u13-kestrels,2026-11-24,training,,,,,,x,,,\n"
      "u13-kestrels,2026-11-24,training,,,,,,,,,maybe\n"
      "u13-kestrels,2026-11-24,training,,,\n"
      "u13-kestrels,2026-11-24,training,,,,,,,,,,\n"
      "u13-kestrels,2026-11-24,training,,,,,,,\"x,,\n"
      "u16-swifts,2026-11-24,training,,,,,,,,,\n"
      "u16-swifts,2026-11-24,match,,,,,,,,,\n"
      "u16-swifts,2026-11-24,match,,11,,,,,,,\n",
      squads);
  ASSERT_EQ(lines.size(), 17U);
  const auto starts = [&](std::size_t at, const std::string& with) {
    EXPECT_EQ(lines[at].substr(0, with.size()), with);
  };
  starts(0, "hours.csv:2: squad: found 'u14', expected the id of a squad");
  starts(1, "hours.csv:3: date: found '2026-11-31'");
  starts(2, "hours.csv:4: date: found '24.11.2026'");
  starts(3, "hours.csv:5: date: found '2027-07-01', expected a day to 2027-06-30, the last that is known");
  starts(4, "hours.csv:6: setting: found 'Training', expected training or match (only canonical hours");
  starts(5, "hours.csv:7: minutes: found '1441'");
  starts(6, "hours.csv:8: players: found '-1'");
  starts(7, "hours.csv:9: hours: found '4801'");
  starts(8, "hours.csv:10: players: found '14'");
  starts(9, "hours.csv:11: warm-up: found 'all'");
  starts(10, "hours.csv:12: warm-up minutes: found 'x'");
  starts(11, "hours.csv:13: confirmed: found 'maybe'");
  starts(12, "hours.csv:14: found cells that do not fit the headings, expected 12 cells");
  starts(13, "hours.csv:15: found cells that do not fit the headings");
  starts(14, "hours.csv:16: found cells that do not fit the headings");
  starts(15, "hours.csv:17: minutes: found an empty cell, expected the minutes of the session");
  starts(16, "hours.csv:18: players: found an empty cell, expected the players");
}

TEST(HoursStream, WantsTheCanonicalHeadings) {
  for (const std::string text : {"", "squad,date\nu13-kestrels,2026-11-24\n"}) {
    const auto table = sum(text, two_squads());
    ASSERT_FALSE(table.ok());
    EXPECT_EQ(table.faults().size(), 1U);
    EXPECT_EQ(table.faults().front().place.line, 1);
  }
}

TEST(HoursStream, CountsFaultsThatAreTooManyToName) {
  std::string rows;
  for (std::size_t i = 0; i < kMostStreamFaults + 5; ++i) rows += "nobody,,,,,,,,,,,\n";
  const Lines lines = faults_of(rows, two_squads());
  ASSERT_EQ(lines.size(), kMostStreamFaults + 1);
  EXPECT_EQ(lines.back(), "hours.csv: found 5 more faults, expected none; the first 1000 are listed");
}

TEST(HoursStream, GivesUpOnALineWithoutEnd) {
  const Lines lines = faults_of(std::string(kLongestStreamLine + 70'000, 'x'), two_squads());
  EXPECT_EQ(lines.size(), 1U);
}

// Squads whose ids share their first and last letters, more than a table of a few slots.
TEST(HoursStream, TellsManySquadsApart) {
  std::vector<SquadRecord> squads(500);
  std::string text = canonical_hours_heading() + "\n";
  for (std::size_t i = 0; i < squads.size(); ++i) {
    squads[i].id = "squad-" + std::to_string(i) + "-of-the-club";
    text += squads[i].id + ",2026-11-24,training," + std::to_string(i) + ",1,,,,,,,\n";
  }
  const auto table = sum(text, squads);
  ASSERT_TRUE(table.ok());
  const auto week = static_cast<std::size_t>(week_of(season_2026(), day("2026-11-24")));
  for (std::size_t i = 0; i < squads.size(); ++i)
    EXPECT_EQ(table.value().at(i, week, Setting::kTraining).hours.count, static_cast<std::int64_t>(i));
}

}  // namespace
}  // namespace lanework::records::test
