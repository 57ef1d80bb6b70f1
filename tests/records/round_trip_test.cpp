// Any season, written in canonical form and read again, is the same season, and writes the same bytes.
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include "core/records/write_season.h"
#include "tests/records/generated_season.h"
#include "tests/records/record_files.h"

namespace lanework::records::test {
namespace {

SeasonSize any_size() {
  return {*rc::gen::inRange(1, 6), *rc::gen::inRange(0, 40), *rc::gen::inRange(0, 20), *rc::gen::inRange(0, 8)};
}

TEST(RoundTrip, CanonicalFilesGiveTheSeasonBack) {
  EXPECT_TRUE(rc::check([](std::uint64_t seed) {
    const Season season = generated_season(seed, any_size());
    const CanonicalFiles files = canonical_files(season, shipped_terms());
    const ReadSeason again = read({files.squads, files.hours, files.injuries, files.players, {}});
    RC_ASSERT(fault_lines(again).empty());
    RC_ASSERT(again.outside_period.empty());
    RC_ASSERT(again.season == season);
    const CanonicalFiles twice = canonical_files(again.season, shipped_terms());
    RC_ASSERT(twice.hours == files.hours && twice.injuries == files.injuries);
    RC_ASSERT(twice.squads == files.squads && twice.players == files.players);
  }));
}

// Every minute of player-hours has three decimals of its own.
TEST(RoundTrip, HoursStatedInDecimalsKeepTheirMinutes) {
  Season season = generated_season(1, {1, 1, 0, 0});
  for (int minutes = 0; minutes < 200; ++minutes) {
    Exposure exposure = season.exposures.front();
    exposure.player.clear();
    exposure.stated_hours = exposure.hours = PlayerMinutes(minutes);
    exposure.defaulted = Defaulted::kNothing;
    season.exposures.push_back(exposure);
  }
  const CanonicalFiles files = canonical_files(season, shipped_terms());
  EXPECT_EQ(read({files.squads, files.hours, files.injuries, {}, {}}).season, season);
}

TEST(RoundTrip, TheCanonicalFormIsOneForm) {
  Files files;
  files.hours = "Team;Day;Type;Min;Attendance;Warm-up\nU13-Kestrels;24.11.2026;Practice;1 h;14;all\n";
  EXPECT_EQ(canonical_files(read_well(files).season, shipped_terms()).hours,
            "squad,date,setting,minutes,players,hours,player,warm-up,warm-up minutes,left out,needing help,confirmed\n"
            "u13-kestrels,2026-11-24,training,60,14,,,most,,,,\n");
}

}  // namespace
}  // namespace lanework::records::test
