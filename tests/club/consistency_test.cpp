// What only the whole club can contradict: each is one line, and a sound club has none.
#include "core/club/consistency.h"

#include <gtest/gtest.h>

#include "tests/club/sample_club.h"

namespace lanework::club::test {
namespace {

using session::Weekday;

Consistency found_in(const Club& club) {
  return find_inconsistencies(club, allocate(club, club.settings.block_from, club.settings.block_weeks));
}

std::string faults_of(const Club& club) {
  std::string out;
  for (const Fault& fault : found_in(club).faults) out += to_line(fault) + "\n";
  return out;
}

std::string remarks_of(const Club& club) {
  std::string out;
  for (const Remark& remark : found_in(club).remarks) out += remark.sentence + "\n";
  return out;
}

Club sound_club() {
  Club club = empty_club();
  add_squad(club, "a", {slot(Weekday::kTuesday, "18:00", 20)}, {match("2026-11-28")});
  add_squad(club, "b", {slot(Weekday::kThursday, "18:00", 20)});
  return club;
}

TEST(Consistency, ASoundClubHasNothing) {
  EXPECT_EQ(faults_of(sound_club()), "");
  EXPECT_EQ(remarks_of(sound_club()), "");
  EXPECT_TRUE(found_in(sound_club()).shared.empty());
}

TEST(Consistency, ASquadNeedsASlot) {
  Club club = sound_club();
  club.squads[0].squad.weekly.slots.clear();
  EXPECT_EQ(faults_of(club), "a.toml: week: found no slot in the week, expected at least one [[week]]\n");
}

TEST(Consistency, SlotsOfOneSquadDoNotOverlap) {
  Club club = sound_club();
  auto& week = club.squads[0].squad.weekly.slots;
  week.push_back(slot(Weekday::kTuesday, "18:19", 20, "pitch"));
  EXPECT_NE(faults_of(club).find("found Tuesday 18:19 to 18:39 beside Tuesday 18:00 to 18:20"), std::string::npos);
  week[1].start = at("18:20");
  EXPECT_EQ(faults_of(club), "");
  week[1].start = at("23:50");
  EXPECT_NE(faults_of(club).find("expected a slot that ends before midnight"), std::string::npos);
}

TEST(Consistency, TheBlockAndTheHolidaysLieInTheSeason) {
  Club club = sound_club();
  club.settings.season_to = day("2026-12-31");
  club.settings.holidays = {{"Spring break", day("2026-12-28"), day("2027-01-01"), {}}};
  EXPECT_EQ(
      faults_of(club),
      "found a block from 2026-11-23 to 2027-01-03, expected days of the season, 2026-08-31 to 2026-12-31\n"
      "found 'Spring break' from 2026-12-28 to 2027-01-01, expected days of the season, 2026-08-31 to 2026-12-31\n");
}

TEST(Consistency, NamesStandOnce) {
  Club club = sound_club();
  club.squads[1].squad.name = club.squads[0].squad.name;
  club.squads[1].squad.in_roster = "a";
  EXPECT_NE(faults_of(club).find("found 'Squad a', expected a name that a.toml does not have"), std::string::npos);
  EXPECT_NE(faults_of(club).find("found 'a', expected players that are not those of a.toml"), std::string::npos);
}

TEST(Consistency, PlayersAreThereAndOfAnAge) {
  Club nobody = sound_club();
  nobody.squads[0].players.clear();
  EXPECT_NE(faults_of(nobody).find("found 'a', who is nobody"), std::string::npos);
  Club ageless = sound_club();
  for (people::Player& player : ageless.squads[0].players) player.birth.reset();
  EXPECT_NE(faults_of(ageless).find("no birth date or age in the roster"), std::string::npos);
  Club infant = sound_club();
  infant.squads[0].players[0].birth = day("2020-01-01");
  EXPECT_NE(faults_of(infant).find("found a youngest player of 6 years"), std::string::npos);
}

TEST(Consistency, PinnedAndBannedIsOneTooMany) {
  Club club = sound_club();
  club.squads[0].squad.weekly.locks.pins = {{"squat", "", 0, 0}};
  club.settings.locks = {{8, 12, {{}, {"squat"}}, {}}};
  EXPECT_EQ(faults_of(club),
            "a.toml: locks: found 'squat' both pinned and banned for this squad, expected one of the two, here and in "
            "club.toml\n");
  club.settings.locks[0].age_to = 11;
  EXPECT_EQ(faults_of(club), "");
}

TEST(Consistency, AgesOutsideTheRoutineAreARemark) {
  Club club = sound_club();
  club.squads[0].players[0].birth = day("2016-05-01");
  club.squads[0].players[1].birth = day("2010-05-01");
  EXPECT_EQ(remarks_of(club),
            "1 of 10 players younger than routine 'early-teens' is for (11 to 14): a-1 (10)\n"
            "1 of 10 players older than routine 'early-teens' is for (11 to 14): a-2 (16)\n"
            "1 of 10 players younger than routine 'match-day' is for (11 to 19): a-1 (10)\n");
}

TEST(Consistency, MatchesOnOddDaysAreRemarks) {
  Club club = sound_club();
  club.settings.holidays = {{"Winter break", day("2026-11-28"), day("2026-11-29"), {}}};
  club.squads[0].squad.weekly.away_days = {day("2026-11-28")};
  club.squads[1].squad.weekly.matches = {match("2028-01-01")};
  EXPECT_EQ(remarks_of(club),
            "the match on 2026-11-28 is in the holidays (Winter break), it keeps its warm-up\n"
            "the match on 2026-11-28 is at home on a day that the squad is away\n"
            "the match on 2028-01-01 is outside the season, it gets no warm-up\n");
}

TEST(Consistency, PlayersOfTwoSquadsAreListed) {
  Club club = sound_club();
  club.squads[1].players[0] = club.squads[0].players[3];
  const Consistency apart = found_in(club);
  ASSERT_EQ(apart.shared.size(), 1U);
  EXPECT_EQ(apart.shared[0].player, "a-4");
  EXPECT_EQ(apart.shared[0].squads, (std::vector<std::string>{"a", "b"}));
  EXPECT_TRUE(apart.remarks.empty());
  club.squads[1].squad.weekly.slots = {slot(Weekday::kTuesday, "18:15", 20, "pitch")};
  EXPECT_EQ(remarks_of(club),
            "a-4 is wanted twice at once, Tuesday from 2026-11-24, 6 times: a at 18:00, b at 18:15\n");
}

TEST(Consistency, ARestrictionAnEveningWouldNotSeeIsARemark) {
  Club club = sound_club();
  people::Restriction restriction;
  restriction.player = "b-2";
  club.squads[1].restrictions.list = {restriction};
  EXPECT_NE(remarks_of(club).find("the restrictions of b-2 stand in another squad's file"), std::string::npos);
  club.squads[1].own_restrictions = 1;
  EXPECT_EQ(remarks_of(club), "");
}

TEST(Consistency, ABlockOfHolidaysIsARemark) {
  Club club = sound_club();
  club.settings.holidays = {{"Building works", day("2026-11-01"), day("2027-02-01"), {}}};
  club.squads[0].squad.weekly.matches.clear();
  EXPECT_EQ(remarks_of(club),
            "no session in the whole block: Building works\nno session in the whole block: Building works\n");
}

}  // namespace
}  // namespace lanework::club::test
