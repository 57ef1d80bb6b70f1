// Periods and weeks, hours and their defaults, events, and days lost.
#include "core/records/season.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include "core/records/hours.h"
#include "tests/records/record_files.h"

namespace lanework::records::test {
namespace {

InjuryRecord injury(const std::string& date, const std::string& returned = {}) {
  InjuryRecord out;
  out.date = day(date);
  if (!returned.empty()) out.returned = day(returned);
  return out;
}

TEST(Period, SaysWhatIsWrongWithIt) {
  EXPECT_FALSE(make_period(day("2026-08-03"), day("2026-08-02"), day("2026-09-01")).ok());
  EXPECT_FALSE(make_period(day("2026-08-03"), day("2030-08-02"), day("2030-09-01")).ok());
  const auto early = make_period(day("2026-08-03"), day("2027-05-30"), day("2026-08-02"), {"flag", 0, 0, "--as-of"});
  ASSERT_FALSE(early.ok());
  EXPECT_EQ(to_line(early.faults().front()),
            "flag: --as-of: found 2026-08-02 as the last day known, expected a day that is not before the period's "
            "first, 2026-08-03");
}

TEST(Weeks, StartOnMondayAndCoverThePeriod) {
  const Period period = make_period(day("2026-08-05"), day("2026-08-17"), day("2026-08-31")).value();
  EXPECT_EQ(weeks_in(period), 3);
  EXPECT_EQ(to_iso(monday_of(period, 0)), "2026-08-03");
  EXPECT_EQ(week_of(period, day("2026-08-09")), 0);
  EXPECT_EQ(week_of(period, day("2026-08-10")), 1);
  EXPECT_TRUE(rc::check([](std::uint16_t from, std::uint8_t after) {
    const Date first{static_cast<int>(from) - 20'000};
    const Date last{first.days_since_epoch + after};
    const Period any = make_period(first, last, last).value();
    const Date monday = monday_of(any, week_of(any, last));
    RC_ASSERT(weekday_name(monday) == "Monday");
    RC_ASSERT(monday <= last && days_between(monday, last) < 7);
  }));
}

// The consensus' table 10 (Bahr R et al. 2020, doi 10.1136/bjsports-2019-101969), in own words.
TEST(TimeLoss, TheSixCasesOfTheConsensus) {
  const Date later = day("2027-06-30");
  const auto days = [&](const InjuryRecord& one) { return time_loss(one, later).days; };
  EXPECT_EQ(days(injury("2026-11-28", "2026-11-28")), 0);  // off in a match, back the same day
  EXPECT_EQ(days(injury("2026-11-24", "2026-11-25")), 0);  // training broken off, as ever next day
  EXPECT_EQ(days(injury("2026-11-23", "2026-11-30")), 6);  // Monday to Monday
  EXPECT_EQ(days(injury("2026-11-28", "2026-12-01")), 2);  // Saturday, able on Tuesday though nothing is on
  InjuryRecord delayed = injury("2026-11-22", "2026-11-29");
  delayed.loss_began = day("2026-11-25");  // trained Monday and Tuesday
  EXPECT_EQ(days(delayed), 3);
  InjuryRecord on_and_off = injury("2026-11-23", "2026-11-29");
  on_and_off.days_missed = {day("2026-11-25"), day("2026-11-27")};
  EXPECT_EQ(days(on_and_off), 2);
}

// One fall, two diagnoses: the event counts once, its severity is the worst one's (the consensus, as quoted in an
// editorial of the same journal).
TEST(Events, CountOnceAndAreAsSevereAsTheirWorstDiagnosis) {
  Season season;
  season.period = season_2026();
  InjuryRecord ankle = injury("2026-11-02", "2026-11-13");
  InjuryRecord knee = injury("2026-11-02", "2026-11-06");
  ankle.event = knee.event = "fall";
  season.injuries = {knee, injury("2026-11-20", "2026-11-22"), ankle};
  const std::vector<InjuryEvent> events = events_of(season.injuries);
  ASSERT_EQ(events.size(), 2U);
  EXPECT_EQ(events[0].diagnoses, (std::vector<std::uint32_t>{0, 2}));
  EXPECT_EQ(time_loss(season, events[0]), (evidence::DaysLost{10, false}));
  EXPECT_EQ(time_loss(season, events[1]), (evidence::DaysLost{1, false}));
}

TEST(Events, StayOpenWhileOneDiagnosisIs) {
  Season season;
  season.period = season_2026();
  InjuryRecord closed = injury("2027-05-21", "2027-05-27");
  InjuryRecord open = injury("2027-05-21");
  closed.event = open.event = "e";
  season.injuries = {closed, open};
  EXPECT_EQ(time_loss(season, events_of(season.injuries).front()), (evidence::DaysLost{40, true}));
}

// Stovitz SD, Shrier I 2012, Br J Sports Med 46:960-963: 11 on the field and 16 counted, 90 minutes: 16.5 h are true,
// 24 h overstated, the rate understated by 0.6875.
TEST(Hours, OfAMatchAreOfThePlayersOnTheField) {
  SquadRecord squad;
  squad.players = 16;
  squad.match_minutes = 90;
  squad.on_the_field = 11;
  const SessionHours usual = session_hours(squad, Setting::kMatch, {});
  EXPECT_EQ(in_hours(usual.hours), "16.5 h");
  EXPECT_EQ(usual.defaulted, Defaulted::kBoth);
  const SessionHours all = session_hours(squad, Setting::kMatch, {{}, 16, {}, false});
  EXPECT_EQ(in_hours(all.hours), "24 h");
  EXPECT_EQ(all.defaulted, Defaulted::kMinutes);
  EXPECT_DOUBLE_EQ(static_cast<double>(usual.hours.count) / static_cast<double>(all.hours.count), 0.6875);
}

TEST(Hours, DefaultToWhatIsUsual) {
  SquadRecord squad;
  squad.players = 16;
  squad.training_minutes = 75;
  EXPECT_EQ(session_hours(squad, Setting::kTraining, {}).hours, PlayerMinutes(1200));
  EXPECT_EQ(session_hours(squad, Setting::kTraining, {60, {}, {}, false}).defaulted, Defaulted::kPlayers);
  const SessionHours one = session_hours(squad, Setting::kTraining, {{}, {}, {}, true});
  EXPECT_EQ(one.hours, PlayerMinutes(75));
  EXPECT_EQ(one.defaulted, Defaulted::kMinutes);
  const SessionHours stated = session_hours(squad, Setting::kTraining, {75, 14, PlayerMinutes(900), false});
  EXPECT_EQ(stated.hours, PlayerMinutes(900));
  EXPECT_EQ(stated.defaulted, Defaulted::kNothing);
  const SessionHours unknown = session_hours(squad, Setting::kMatch, {});
  EXPECT_TRUE(unknown.minutes_lack && unknown.players_lack);
}

}  // namespace
}  // namespace lanework::records::test
