// A squad's weeks as dated sessions, against hand-made weeks and a naive search.
#include "core/club/calendar.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>

#include "tests/club/sample_club.h"

namespace lanework::club::test {
namespace {

using session::Weekday;

std::string days_of(const Calendar& calendar) {
  std::string out;
  for (const PlannedSlot& slot : calendar.slots) {
    out += to_iso(slot.date).substr(5) + " " + to_text(slot.start);
    if (slot.days_to_match) out += " " + std::to_string(*slot.days_to_match);
    if (slot.match_day) out += slot.elsewhere ? " away match" : " match";
    out += "\n";
  }
  return out;
}

std::string missed_of(const Calendar& calendar) {
  std::string out;
  for (const MissedSlot& missed : calendar.missed) out += to_iso(missed.date).substr(5) + " " + missed.why + "\n";
  return out;
}

TEST(Calendar, AWeekIsRepeated) {
  Club club = empty_club();
  add_squad(club, "a", {slot(Weekday::kThursday, "18:00", 20), slot(Weekday::kTuesday, "17:30", 15, "pitch", 1)});
  const Calendar calendar = expand(club, club.squads[0], monday(), 2);
  EXPECT_EQ(days_of(calendar), "11-24 17:30\n11-26 18:00\n12-01 17:30\n12-03 18:00\n");
  EXPECT_EQ(calendar.slots[0].strip_id, "pitch");
  EXPECT_EQ(calendar.slots[0].strip.lanes, 1);
  EXPECT_EQ(calendar.slots[0].strip.area_width.count, 10000);  // one of four lanes, a quarter of the width
  EXPECT_EQ(calendar.slots[0].length.count, 900);
  EXPECT_EQ(calendar.slots[1].strip_id, "hall");
  EXPECT_EQ(calendar.slots[1].strip.lanes, 2);
  EXPECT_EQ(calendar.slots[1].strip.area_width.count, 10000);
  EXPECT_TRUE(calendar.missed.empty());
}

TEST(Calendar, MatchesCountDownAndBringTheirWarmUp) {
  Club club = empty_club();
  add_squad(club, "a", {slot(Weekday::kTuesday, "18:00", 20), slot(Weekday::kSaturday, "09:00", 20)},
            {match("2026-11-28", "10:00"), match("2026-12-05"), match("2026-12-12", "", true),
             match("2026-12-19", "11:00", true)});
  const Calendar calendar = expand(club, club.squads[0], monday(), 4);
  // Kick-off at 10:00, five minutes before it thirteen minutes of warm-up: 9:42.
  EXPECT_EQ(days_of(calendar),
            "11-24 18:00 4\n11-28 09:42 0 match\n12-01 18:00 4\n12-05 09:00 0 match\n12-08 18:00 4\n"
            "12-12 09:00 0 away match\n12-15 18:00 4\n12-19 10:42 0 away match\n");
  EXPECT_EQ(missed_of(calendar),
            "11-28 the match has a warm-up of its own\n12-19 the match has a warm-up of its own\n");
}

TEST(Calendar, HolidaysAndAwayDaysAreListed) {
  Club club = empty_club();
  club.settings.holidays = {{"Winter break", day("2026-12-01"), day("2026-12-06"), {}}};
  ClubSquad& squad = add_squad(club, "a", {slot(Weekday::kTuesday, "18:00", 20), slot(Weekday::kThursday, "18:00", 20)},
                               {match("2026-12-05", "10:00")});
  squad.squad.weekly.away_days = {day("2026-11-26")};
  const Calendar calendar = expand(club, squad, monday(), 3);
  EXPECT_EQ(days_of(calendar), "11-24 18:00 11\n12-05 09:42 0 match\n12-08 18:00\n12-10 18:00\n");
  EXPECT_EQ(missed_of(calendar), "11-26 the squad is away\n12-01 Winter break\n12-03 Winter break\n");
}

TEST(Calendar, NothingOutsideTheSeason) {
  Club club = empty_club();
  club.settings.season_to = day("2026-11-25");
  add_squad(club, "a", {slot(Weekday::kTuesday, "18:00", 20), slot(Weekday::kThursday, "18:00", 20)},
            {match("2026-11-28", "10:00")});
  const Calendar calendar = expand(club, club.squads[0], monday(), 1);
  EXPECT_EQ(days_of(calendar), "11-24 18:00 4\n");
  EXPECT_EQ(missed_of(calendar), "11-26 outside the season\n11-28 outside the season\n");
}

TEST(Calendar, AnEveningOfASlotHasEverything) {
  Club club = empty_club();
  ClubSquad& squad = add_squad(club, "a", {slot(Weekday::kTuesday, "18:00", 20)}, {match("2026-11-28")});
  squad.squad.weekly.locks.bans = {"squat"};
  club.settings.locks = {{11, 14, {{{"side-plank", "", 0, 0}}, {"strides"}}, {}}, {15, 19, {{}, {"bridge"}}, {}}};
  people::Restriction out;
  out.player = "a-3";
  out.sits_out = true;
  out.until = day("2026-11-30");
  people::Restriction whole;
  whole.squad = "a";
  whole.kinds = {catalogue::StressKind::kImpact};
  squad.restrictions.list = {out, whole};
  const Calendar calendar = expand(club, squad, monday(), 2);
  const auto first = evening_of(club, squad, calendar.slots[0]);
  ASSERT_TRUE(first) << to_line(first.faults().front());
  EXPECT_EQ(first.value().turnout, 9);
  EXPECT_EQ(first.value().age, 12);
  EXPECT_EQ(first.value().days_to_match, 4);
  EXPECT_EQ(first.value().bans, (std::vector<std::string>{"squat", "strides"}));
  ASSERT_EQ(first.value().pins.size(), 1U);
  EXPECT_EQ(first.value().restrictions.size(), 1U);
  EXPECT_EQ(first.value().kit.cones, 16);
  EXPECT_EQ(turnout_on(squad, day("2026-12-01")), 10);
  squad.squad.weekly.expected_turnout = 7;
  EXPECT_EQ(evening_of(club, squad, calendar.slots[1]).value().turnout, 7);
  EXPECT_EQ(&routine_of(squad, calendar.slots[0]), &squad.routine);
}

// Any week, matches, holidays and away days: each wish of each day is either planned or missed, and the days to the
// next match are those of a search day by day.
TEST(CalendarProperty, NothingIsLostAndMatchesAreCountedRight) {
  EXPECT_TRUE(rc::check([] {
    Club club = empty_club();
    const int weeks = *rc::gen::inRange(1, 9);
    std::vector<session::WeekSlot> week;
    for (int i = *rc::gen::inRange(0, 5); i > 0; --i) {
      week.push_back(slot(static_cast<Weekday>(*rc::gen::inRange(0, 7)), "18:00", *rc::gen::inRange(5, 30)));
    }
    std::vector<session::Match> matches;
    for (int on = 0; on < 70; on += *rc::gen::inRange(1, 20)) {
      const Date date{monday().days_since_epoch + on - 7};
      matches.push_back(match(to_iso(date), *rc::gen::element<std::string>("", "11:00"), *rc::gen::arbitrary<bool>()));
    }
    const int holiday = *rc::gen::inRange(0, 50);
    club.settings.holidays = {{"break",
                               Date{monday().days_since_epoch + holiday},
                               Date{monday().days_since_epoch + holiday + *rc::gen::inRange(0, 10)},
                               {}}};
    ClubSquad& squad = add_squad(club, "a", week, matches);
    squad.squad.weekly.away_days = {Date{monday().days_since_epoch + *rc::gen::inRange(0, 50)}};
    const Calendar calendar = expand(club, squad, monday(), weeks);

    const auto is_match = [&](Date date) {
      return std::any_of(matches.begin(), matches.end(), [&](const session::Match& m) { return m.date == date; });
    };
    const Date end{monday().days_since_epoch + 7 * weeks};
    std::size_t own = 0;
    for (const session::Match& m : matches) own += m.start && monday() <= m.date && m.date < end ? 1U : 0U;
    RC_ASSERT(calendar.slots.size() + calendar.missed.size() == week.size() * static_cast<std::size_t>(weeks) + own);
    for (const PlannedSlot& planned : calendar.slots) {
      RC_ASSERT(monday() <= planned.date && planned.date < end);
      std::optional<int> naive;
      for (int on = 0; on < 200 && !naive; ++on) {
        if (is_match(Date{planned.date.days_since_epoch + on})) naive = on;
      }
      RC_ASSERT(planned.days_to_match == naive);
      RC_ASSERT(planned.match_day == (naive == 0));
      const Holiday& free = club.settings.holidays[0];
      if (!planned.match_day) RC_ASSERT(planned.date < free.from || free.to < planned.date);
    }
  }));
}

}  // namespace
}  // namespace lanework::club::test
