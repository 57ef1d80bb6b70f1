// Worked by hand on the calendar of 2026: 23 November is a Monday.
#include <gtest/gtest.h>

#include "core/check/block_calendar.h"
#include "core/check/lane_sharing.h"

namespace lanework::check {
namespace {

Date day(const char* iso) { return *parse_iso_date(iso); }

using Spells = std::vector<int>;

TEST(BlockCalendar, SpellsOfThreeOrFourWeeks) {
  EXPECT_EQ(spells_of(3), (Spells{0, 0, 0}));
  EXPECT_EQ(spells_of(4), (Spells{0, 0, 0, 0}));
  EXPECT_EQ(spells_of(5), (Spells{0, 0, 0, 1, 1}));
  EXPECT_EQ(spells_of(6), (Spells{0, 0, 0, 1, 1, 1}));
  EXPECT_EQ(spells_of(7), (Spells{0, 0, 0, 0, 1, 1, 1}));
  EXPECT_EQ(spells_of(8), (Spells{0, 0, 0, 0, 1, 1, 1, 1}));
}

TEST(BlockCalendar, Weekdays) {
  EXPECT_EQ(weekday_of(day("2026-11-23")), 0);
  EXPECT_EQ(weekday_of(day("2026-11-29")), 6);
  EXPECT_EQ(weekday_of(day("2024-02-29")), 3);
  EXPECT_EQ(weekday_of(day("1970-01-01")), 3);
  EXPECT_EQ(weekday_of(day("1969-12-31")), 2);
}

ClubMatter club_of_one() {
  ClubMatter club;
  club.season_from = day("2026-08-31");
  club.season_to = day("2026-12-09");
  club.monday = day("2026-11-23");
  club.weeks = 3;
  club.holidays = {{"Saint's day", day("2026-12-01"), day("2026-12-01")}};
  Strip strip;
  strip.lanes = 4;
  strip.width_mm = 40000;
  club.strips = {{"pitch", strip}};
  SquadWeek squad;
  squad.id = "a";
  squad.strip = "pitch";
  squad.slots = {{1, 18 * 60, 20 * 60, "pitch", 2}, {3, 18 * 60, 20 * 60, "pitch", 2}};  // Tuesdays and Thursdays
  club.squads = {squad};
  return club;
}

std::vector<std::string> told(const SquadCalendar& calendar) {
  std::vector<std::string> out;
  for (const Wish& wish : calendar.wishes) {
    out.push_back(words_of(wish.date, wish.start_minutes) + (wish.match_day ? " match" : "") + " week " +
                  std::to_string(wish.week) + " days " +
                  (wish.days_to_match ? std::to_string(*wish.days_to_match) : "-"));
  }
  for (const FallenOut& slot : calendar.fallen_out) {
    out.push_back("missed " + words_of(slot.date, slot.start_minutes) + " " + slot.words.front());
  }
  return out;
}

TEST(BlockCalendar, ThreeWeeksWithEverythingThatCanStandInTheWay) {
  ClubMatter club = club_of_one();
  SquadWeek& squad = club.squads.front();
  // Kick-off at 10:00, warm-up of 12 minutes and a half: it starts 18 minutes before, and ends by 09:55.
  squad.matches = {{day("2026-11-28"), 600, 750, false}, {day("2026-12-03"), {}, 0, true}};
  squad.away_days = {day("2026-11-26")};
  // 2026-12-10, a Thursday, is after the season.
  EXPECT_EQ(told(calendar_of(club, squad)),
            (std::vector<std::string>{"2026-11-24 18:00 week 0 days 4", "2026-11-28 09:42 match week 0 days 0",
                                      "2026-12-03 18:00 match week 1 days 0", "2026-12-08 18:00 week 2 days -",
                                      "missed 2026-11-26 18:00 away", "missed 2026-12-01 18:00 Saint's day",
                                      "missed 2026-12-10 18:00 season"}));
}

TEST(BlockCalendar, AMatchWithAKickOffTakesTheSlotOfItsDay) {
  ClubMatter club = club_of_one();
  SquadWeek& squad = club.squads.front();
  squad.matches = {{day("2026-12-01"), 18 * 60 + 30, 600, false}, {day("2026-12-31"), {}, 0, false}};
  const std::vector<std::string> lines = told(calendar_of(club, squad));
  EXPECT_EQ(lines.at(2), "2026-12-01 18:15 match week 1 days 0");  // in the holidays it keeps its warm-up
  EXPECT_EQ(lines.at(3), "2026-12-03 18:00 week 1 days 28");       // beyond the block
  EXPECT_EQ(lines.at(5), "missed 2026-12-01 18:00 match");
}

StatedAnswer answer_with(const char* squad, std::vector<int> lanes) {
  StatedSession session;
  session.date = day("2026-11-24");
  session.start_minutes = 18 * 60;
  session.lanes = std::move(lanes);
  StatedBlock block;
  block.squad = squad;
  block.sessions = {session};
  StatedAnswer answer;
  answer.squads = {block};
  return answer;
}

// Squad a wants 2 of 4 lanes from 18:00 to 18:20, and 10 cones; b 3 lanes and 10 cones from 18:10 on.
struct TwoSquads {
  ClubMatter club = club_of_one();
  std::vector<SquadCalendar> calendars;
  BlockViolations violations;

  TwoSquads() {
    SquadWeek& a = club.squads.front();
    a.slots.pop_back();
    a.kit.cones = 10;
    SquadWeek b = a;
    b.id = "b";
    b.slots = {{1, 18 * 60 + 10, 20 * 60, "pitch", 3}};
    club.weeks = 1;
    club.kit = Kit{16, 0, 0};
    club.squads.push_back(b);
    for (const SquadWeek& squad : club.squads) calendars.push_back(calendar_of(club, squad));
  }
  Sharing share(const StatedAnswer& answer) { return share_out(club, calendars, answer, violations); }
};

TEST(LaneSharing, EarlierStartsAreServedFirst) {
  TwoSquads two;
  const Sharing sharing = two.share(answer_with("a", {1, 2}));
  EXPECT_TRUE(two.violations.empty());
  EXPECT_EQ(sharing[0][0].lanes, 2);
  EXPECT_EQ(sharing[0][0].kit.cones, 10);
  EXPECT_EQ(sharing[1][0].lanes, 2);  // not 3
  EXPECT_EQ(sharing[1][0].kit.cones, 6);
}

TEST(LaneSharing, AnyLanesWillDoButOnesThatExistAndAreFree) {
  for (const auto& [lanes, rule] : std::vector<std::pair<std::vector<int>, std::string>>{
           {{2, 4}, ""}, {{4, 5}, "lane-unknown"}, {{2, 1}, "lane-order"}, {{3}, "lane-count"}}) {
    TwoSquads two;
    two.share(answer_with("a", lanes));
    EXPECT_EQ(two.violations.size(), rule.empty() ? 0U : 1U);
    for (const BlockViolation& violation : two.violations) EXPECT_EQ(violation.rule, rule);
  }
}

TEST(LaneSharing, WhoComesToNoLaneHasNoSession) {
  TwoSquads two;
  two.club.squads[0].slots[0].lanes = 4;
  two.calendars[0] = calendar_of(two.club, two.club.squads[0]);
  EXPECT_FALSE(two.share({})[1][0].takes_place);
}

}  // namespace
}  // namespace lanework::check
