// The calendar that follows a squad: what a phone has after any number of looks is what the plan says now.
#include "core/club/followed_calendar.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <map>
#include <set>

#include "core/club/allocation.h"
#include "tests/club/read_calendar.h"
#include "tests/club/sample_club.h"

namespace lanework::club::test {
namespace {

using Evenings = std::vector<FollowedEvening>;

constexpr std::int64_t kNoon = 1'795'435'200;  // 2026-11-23T12:00:00Z
constexpr std::int64_t kHour = 3600;
const FollowedSquad kSquad{"Quillmere Juniors", "a", "Squad a"};

FollowedEvening evening(const std::string& date, const std::string& start, const std::string& place = "hall") {
  return {day(date), 1, at(start), 20, false, place, 0, 0, false};
}

// The first look on the Monday at noon.
Evenings first_said(const Evenings& planned) { return said_now({}, planned, monday(), monday(), kNoon); }
// The next, an hour later.
Evenings said_next(const Evenings& before, const Evenings& planned) {
  return said_now(before, planned, monday(), monday(), kNoon + kHour);
}

TEST(FollowedCalendar, SaysPlaceTimeSquadAndKindAndNothingElse) {
  Club club = empty_club();
  ClubSquad& squad = add_squad(club, "a", {slot(session::Weekday::kTuesday, "18:00", 20)},
                               {match("2026-11-28", "10:00"), match("2026-12-05", "10:00", true)});
  squad.squad.weekly.matches[0].opponent = "Thimbleby Rovers";
  people::Restriction restriction;
  restriction.player = "a-1";
  restriction.instruction = "no jumping";
  squad.restrictions.list.push_back(restriction);
  const Calendar calendar = allocate(club, monday(), 3).calendars.front();
  const std::string text = to_icalendar(kSquad, first_said(followed_evenings(calendar)));
  const ReadCalendar read = read_back(text);
  EXPECT_EQ(read.broken, "");
  EXPECT_EQ(fault_of_lines(text), "");
  EXPECT_EQ(read.name, "Squad a");
  EXPECT_EQ(read.look_again, "PT1H");
  ASSERT_EQ(read.events.size(), calendar.slots.size());
  EXPECT_EQ(read.events[0].uid, "a-20261124-1@" + read.events[0].uid.substr(read.events[0].uid.find('@') + 1));
  EXPECT_EQ(read.events[0].summary, "Squad a: warm-up");
  EXPECT_EQ(read.events[0].location, "hall, lanes 1 and 2");
  EXPECT_EQ(read.events[0].start, "20261124T180000");
  EXPECT_EQ(read.events[0].end, "20261124T182000");
  EXPECT_EQ(read.events[0].stamp, "20261123T120000Z");
  EXPECT_EQ(read.events[0].changed, "20261123T120000Z");
  EXPECT_EQ(read.events[0].status, "CONFIRMED");
  EXPECT_EQ(read.events[0].sequence, 0);
  EXPECT_TRUE(read.events[0].floating);
  EXPECT_EQ(read.events[1].summary, "Squad a: warm-up before the match");
  EXPECT_EQ(read.events[3].location, "away");
  for (const ReadEvent& event : read.events) EXPECT_EQ(event.description, "");
  for (const char* not_due :
       {"Player", "a-1@", "jumping", "2014", "Thimbleby", "DESCRIPTION", "ATTENDEE", "ORGANIZER"}) {
    EXPECT_EQ(text.find(not_due), std::string::npos) << not_due;
  }
}

TEST(FollowedCalendar, WhatDidNotChangeIsTheSameText) {
  const Evenings planned = {evening("2026-11-24", "18:00"), evening("2026-11-26", "18:00")};
  const Evenings said = first_said(planned);
  EXPECT_EQ(said_next(said, planned), said);
  EXPECT_EQ(to_icalendar(kSquad, said_next(said, planned)), to_icalendar(kSquad, said));
}

TEST(FollowedCalendar, AMovedEveningTakesThePlaceOfTheOlderOne) {
  const Evenings said = first_said({evening("2026-11-24", "18:00"), evening("2026-11-26", "18:00")});
  const Evenings next = said_next(said, {evening("2026-11-24", "18:30", "pitch"), evening("2026-11-26", "18:00")});
  const ReadCalendar before = read_back(to_icalendar(kSquad, said));
  const ReadCalendar after = read_back(to_icalendar(kSquad, next));
  ASSERT_EQ(after.events.size(), 2U);
  EXPECT_EQ(after.events[0].uid, before.events[0].uid);
  EXPECT_EQ(after.events[0].sequence, 1);
  EXPECT_EQ(after.events[0].stamp, "20261123T130000Z");
  EXPECT_EQ(after.events[0].start, "20261124T183000");
  EXPECT_EQ(after.events[0].location, "pitch");
  EXPECT_EQ(after.events[1].sequence, 0);
  EXPECT_EQ(after.events[1].stamp, "20261123T120000Z");
}

TEST(FollowedCalendar, AnEveningThatWasTakenOutIsCalledOffUntilItsDayIsOver) {
  const Evenings said = first_said({evening("2026-11-24", "18:00"), evening("2026-11-26", "18:00")});
  const Evenings planned = {evening("2026-11-24", "18:00")};
  const Evenings next = said_next(said, planned);
  const ReadCalendar read = read_back(to_icalendar(kSquad, next));
  ASSERT_EQ(read.events.size(), 2U);
  EXPECT_EQ(read.events[1].status, "CANCELLED");
  EXPECT_EQ(read.events[1].sequence, 1);
  EXPECT_EQ(said_next(next, planned), next) << "once";
  EXPECT_EQ(said_now(next, planned, monday(), day("2026-11-26"), kNoon).size(), 2U);
  EXPECT_EQ(said_now(next, planned, monday(), day("2026-11-27"), kNoon).size(), 1U);
}

TEST(FollowedCalendar, AnEveningThatIsBackIsOn) {
  const Evenings planned = {evening("2026-11-24", "18:00")};
  const Evenings back = said_next(said_next(first_said(planned), {}), planned);
  ASSERT_EQ(back.size(), 1U);
  EXPECT_FALSE(back[0].called_off);
  EXPECT_EQ(back[0].revision, 2);
}

// The lead draws up the next block on a Thursday: Friday's evening is not of it, and takes place.
TEST(FollowedCalendar, APlanSaysNothingOfTheDaysBeforeIt) {
  const Evenings said = first_said({evening("2026-11-27", "18:00"), evening("2026-12-04", "18:00")});
  const Evenings next = said_now(said, {evening("2026-12-05", "18:00")}, day("2026-11-30"), day("2026-11-26"), kNoon);
  ASSERT_EQ(next.size(), 3U);
  EXPECT_EQ(next[0], said[0]);
  EXPECT_TRUE(next[1].called_off);
  EXPECT_FALSE(next[2].called_off);
}

TEST(FollowedCalendar, WhatIsOverStaysTwoWeeksAndIsNotTakenBack) {
  const Evenings said = first_said({evening("2026-11-24", "18:00")});
  EXPECT_EQ(said_now(said, {}, monday(), day("2026-12-08"), kNoon), said);
  EXPECT_TRUE(said_now(said, {}, monday(), day("2026-12-09"), kNoon).empty());
  EXPECT_TRUE(said_now({}, {evening("2026-11-24", "18:00")}, monday(), day("2026-12-09"), kNoon).empty());
}

TEST(FollowedCalendar, TwoEveningsOfADayAreTwo) {
  Club club = empty_club();
  add_squad(club, "a", {slot(session::Weekday::kTuesday, "09:00", 20), slot(session::Weekday::kTuesday, "18:00", 20)});
  const Evenings planned = followed_evenings(allocate(club, monday(), 3).calendars.front());
  ASSERT_EQ(planned.size(), 6U);
  EXPECT_EQ(planned[0].number, 1);
  EXPECT_EQ(planned[1].number, 2);
  EXPECT_EQ(planned[1].start, at("18:00"));
  EXPECT_EQ(planned[2].number, 1);
}

TEST(FollowedCalendar, WhatWasSaidComesBackAsItWasKept) {
  Evenings said =
      first_said({evening("2026-11-24", "18:00", "North end; \"lane\" 1, \\"), evening("2026-11-26", "00:00")});
  said[1].called_off = said[1].before_match = true;
  said[1].revision = 7;
  EXPECT_EQ(read_kept_text(to_kept_text(said)), said);
  EXPECT_TRUE(read_kept_text("").empty());
}

// Nobody wrote these; a store that was mended by hand might have them.
TEST(FollowedCalendar, OfWhatCannotBeReadNothingWasSaid) {
  for (const char* text :
       {"{", "[]", "{\"evenings\":7}", "{\"evenings\":[{}]}", "{\"evenings\":[{\"day\":\"2026-13-40\"}]}"}) {
    EXPECT_TRUE(read_kept_text(text).empty()) << text;
  }
  EXPECT_TRUE(rc::check("any bytes", [](const std::string& bytes) { static_cast<void>(read_kept_text(bytes)); }));
}

TEST(FollowedCalendar, ASquadAndAPlaceOfAnyBytesGiveAWholeCalendar) {
  EXPECT_TRUE(rc::check("any bytes", [](const std::string& bytes) {
    const std::string text =
        to_icalendar({bytes, "a", "x" + bytes}, first_said({evening("2026-11-24", "18:00", bytes + "x")}));
    RC_ASSERT(fault_of_lines(text) == "");
    RC_ASSERT(read_back(text).events.size() == 1U);
  }));
}

// A phone that keeps of each UID the one with the highest SEQUENCE, whatever it looked at.
class Phone {
 public:
  void look(const std::string& text) {
    for (const ReadEvent& event : read_back(text).events) {
      ReadEvent& kept = events_[event.uid];
      if (kept.uid.empty() || event.sequence >= kept.sequence) kept = event;
    }
  }
  // 'start location' of those that are on.
  [[nodiscard]] std::set<std::string> shows() const {
    std::set<std::string> out;
    for (const auto& [uid, event] : events_) {
      if (event.status == "CONFIRMED") out.insert(event.start + " " + event.location);
    }
    return out;
  }

 private:
  std::map<std::string, ReadEvent> events_;
};

TEST(FollowedCalendar, AfterAnyPlansAPhoneShowsTheLast) {
  EXPECT_TRUE(rc::check("plans", [] {
    Phone phone;
    Evenings said;
    Evenings planned;
    const int plans = *rc::gen::inRange(1, 8);
    for (int i = 0; i < plans; ++i) {
      planned.clear();
      for (int date = 24; date < 29; ++date) {
        if (*rc::gen::inRange(0, 3) == 0) continue;
        planned.push_back(evening("2026-11-" + std::to_string(date), *rc::gen::element<std::string>("18:00", "18:30"),
                                  *rc::gen::element<std::string>("hall", "pitch")));
      }
      said = said_now(said, planned, monday(), monday(), kNoon + i * kHour);
      const bool misses_one = i + 1 < plans && *rc::gen::inRange(0, 3) == 0;
      if (!misses_one) phone.look(to_icalendar(kSquad, said));
    }
    Phone fresh;
    fresh.look(to_icalendar(kSquad, first_said(planned)));
    RC_ASSERT(phone.shows() == fresh.shows());
  }));
}

}  // namespace
}  // namespace lanework::club::test
