// iCalendar held against RFC 5545 and read back by libical, which did not write it.
#include "core/club/icalendar.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <set>

#include "core/club/allocation.h"
#include "tests/club/read_calendar.h"
#include "tests/club/sample_club.h"

namespace lanework::club::test {
namespace {

constexpr const char* kStamp = "20261120T080000Z";

SquadEvents one_event(std::string summary, std::string location, std::string description) {
  return {"Quillmere Juniors",
          "a",
          "Squad a",
          {{day("2026-11-24"), at("18:00"), Seconds(20 * 60), std::move(summary), std::move(location),
            std::move(description)}}};
}

TEST(ICalendar, EveryPropertyComesBack) {
  const ReadCalendar read =
      read_back(to_icalendar(one_event("Warm-up", "North end, lanes 1 and 2", "Squat\nHop"), kStamp));
  EXPECT_EQ(read.broken, "");
  EXPECT_EQ(read.name, "Squad a");
  ASSERT_EQ(read.events.size(), 1U);
  const ReadEvent& event = read.events.front();
  EXPECT_TRUE(event.uid.starts_with("a-20261124T180000@")) << event.uid;
  EXPECT_EQ(event.stamp, kStamp);
  EXPECT_EQ(event.start, "20261124T180000");
  EXPECT_EQ(event.end, "20261124T182000");
  EXPECT_TRUE(event.floating);
  EXPECT_EQ(event.summary, "Warm-up");
  EXPECT_EQ(event.location, "North end, lanes 1 and 2");
  EXPECT_EQ(event.description, "Squat\nHop");
}

TEST(ICalendar, PastMidnightIsTheNextDay) {
  SquadEvents squad = one_event("Warm-up", "", "");
  squad.events.front().date = day("2026-12-31");
  squad.events.front().start = at("23:50");
  const ReadCalendar read = read_back(to_icalendar(squad, kStamp));
  ASSERT_EQ(read.events.size(), 1U);
  EXPECT_EQ(read.events.front().end, "20270101T001000");
}

// RFC 5545, 3.1: a line of exactly 75 octets stays whole, one more is folded, whatever the width of the character.
TEST(ICalendar, FoldsAtTheEdgeOfSeventyFiveOctets) {
  for (const std::string character : {"x", "\u00e9", "\u20ac", "\U0001F600", ",", "\n", "\\"}) {
    for (std::size_t before = 50; before < 80; ++before) {
      const std::string text = std::string(before, 'a') + character + "b";
      const std::string written = to_icalendar(one_event(text, text, text), kStamp);
      EXPECT_EQ(fault_of_lines(written), "");
      const ReadCalendar read = read_back(written);
      ASSERT_EQ(read.events.size(), 1U);
      EXPECT_EQ(read.events.front().summary, text);
      EXPECT_EQ(read.events.front().location, text);
      EXPECT_EQ(read.events.front().description, text);
    }
  }
}

TEST(ICalendar, NastyTextComesBackAsItWas) {
  EXPECT_TRUE(rc::check("text of any kind", [] {
    const auto piece = rc::gen::element<std::string>(
        ",", ";", "\\", "\n", "\\n", ":", "\"", "=", "^n", "BEGIN:VEVENT", "END:VCALENDAR", "a", " ", "\t", "\u00e9",
        "\u20ac", "\U0001F600", "\u0645\u0631", "\u200d", "\u00a0", "0123456789012345678901234567890123456789");
    const auto text =
        rc::gen::map(rc::gen::container<std::vector<std::string>>(piece), [](std::vector<std::string> all) {
          std::string out = "x";  // RFC 5545 has no opinion about white space at the ends; libical does
          for (const std::string& each : all) out += each;
          return out + "x";
        });
    const SquadEvents squad = one_event(*text, *text, *text);
    const std::string written = to_icalendar(squad, kStamp);
    RC_ASSERT(fault_of_lines(written) == "");
    const ReadCalendar read = read_back(written);
    RC_ASSERT(read.broken == "");
    RC_ASSERT(read.events.size() == 1U);
    RC_ASSERT(read.events.front().summary == squad.events.front().summary);
    RC_ASSERT(read.events.front().location == squad.events.front().location);
    RC_ASSERT(read.events.front().description == squad.events.front().description);
  }));
}

TEST(ICalendar, AnyBytesGiveWholeLinesOfUtf8) {
  EXPECT_TRUE(rc::check("any bytes", [](const std::string& bytes) {
    const std::string written = to_icalendar(one_event(bytes, "x" + bytes, bytes + "x"), kStamp);
    RC_ASSERT(fault_of_lines(written) == "");
    RC_ASSERT(read_back(written).events.size() == 1U);
    // RFC 5545, 3.3.11: no control character in a text but the tab.
    for (const char c : written)
      RC_ASSERT(c == '\r' || c == '\n' || c == '\t' || static_cast<unsigned char>(c) >= 0x20);
  }));
}

TEST(ICalendar, BrokenUtf8BecomesTheReplacementCharacter) {
  const ReadCalendar read = read_back(to_icalendar(one_event("a\xC3(\xED\xA0\x80\xF5z\x01", "", ""), kStamp));
  ASSERT_EQ(read.events.size(), 1U);
  EXPECT_EQ(read.events.front().summary, "a\uFFFD(\uFFFD\uFFFD\uFFFD\uFFFDz");
}

TEST(ICalendar, ASquadsBlockHasOneEventASessionAndNamesNobody) {
  Club club = empty_club();
  ClubSquad& squad = add_squad(club, "a", {slot(session::Weekday::kTuesday, "18:00", 20)},
                               {match("2026-11-28", "10:00"), match("2026-12-05", "10:00", true)});
  squad.squad.weekly.matches[0].opponent = "Thimbleby Rovers";
  people::Restriction restriction;
  restriction.player = "a-1";
  restriction.instruction = "no jumping";
  squad.restrictions.list.push_back(restriction);
  const Calendar calendar = allocate(club, monday(), 3).calendars.front();
  const DrillLines drills = {{{day("2026-11-24"), at("18:00")}, {"Squat, 2 \u00d7 10", "Side plank, 20 s a side"}}};
  const std::string written = to_icalendar(events_of(club, club.squads.front(), calendar, drills), kStamp);
  const ReadCalendar read = read_back(written);
  EXPECT_EQ(read.broken, "");
  ASSERT_EQ(read.events.size(), calendar.slots.size());
  std::set<std::string> uids;
  for (const ReadEvent& event : read.events) uids.insert(event.uid);
  EXPECT_EQ(uids.size(), read.events.size());
  EXPECT_EQ(read.events[0].location, "hall, lanes 1 and 2");
  EXPECT_EQ(read.events[0].description, "Squat, 2 \u00d7 10\nSide plank, 20 s a side");
  EXPECT_EQ(read.events[1].summary, "Squad a: warm-up before the match against Thimbleby Rovers");
  EXPECT_EQ(read.events[1].description, "");
  EXPECT_EQ(read.events[3].location, "away");
  for (const char* secret : {"Player", "a-1", "jumping", "2014"}) EXPECT_EQ(written.find(secret), std::string::npos);
}

TEST(ICalendar, UidsStayWhenTheCalendarIsMadeAnew) {
  const SquadEvents before = one_event("Warm-up", "North end", "");
  const SquadEvents after = one_event("Something else", "South side", "Squat");
  EXPECT_EQ(uid_of(before, before.events.front()), uid_of(after, after.events.front()));
  SquadEvents other = before;
  other.club = "Larkhollow Athletic";
  EXPECT_NE(uid_of(before, before.events.front()), uid_of(other, other.events.front()));
}

}  // namespace
}  // namespace lanework::club::test
