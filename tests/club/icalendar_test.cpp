// iCalendar held against RFC 5545 and read back by libical, which did not write it.
#include "core/club/icalendar.h"

#include <gtest/gtest.h>
#include <libical/ical.h>
#include <rapidcheck.h>

#include <algorithm>
#include <memory>
#include <set>

#include "core/club/allocation.h"
#include "tests/club/sample_club.h"

namespace lanework::club::test {
namespace {

constexpr const char* kStamp = "20261120T080000Z";

struct Release {
  void operator()(icalcomponent* component) const { icalcomponent_free(component); }
};
using Component = std::unique_ptr<icalcomponent, Release>;

struct ReadEvent {
  std::string uid;
  std::string stamp;
  std::string start;
  std::string end;
  bool floating = false;
  std::string summary;
  std::string location;
  std::string description;
};

struct ReadCalendar {
  std::string name;
  std::vector<ReadEvent> events;
  std::string broken;  // what libical could not make sense of
};

std::string or_empty(const char* text) { return text == nullptr ? "" : text; }

std::string errors_in(icalcomponent* component) {
  std::string out;
  for (icalproperty* each = icalcomponent_get_first_property(component, ICAL_XLICERROR_PROPERTY); each != nullptr;
       each = icalcomponent_get_next_property(component, ICAL_XLICERROR_PROPERTY)) {
    out += or_empty(icalproperty_get_xlicerror(each)) + "\n";
  }
  return out;
}

ReadCalendar read_back(const std::string& text) {
  ReadCalendar out;
  const Component calendar(icalparser_parse_string(text.c_str()));
  if (calendar == nullptr || icalcomponent_isa(calendar.get()) != ICAL_VCALENDAR_COMPONENT) {
    out.broken = "no VCALENDAR";
    return out;
  }
  out.broken += errors_in(calendar.get());
  if (icalproperty* name = icalcomponent_get_first_property(calendar.get(), ICAL_NAME_PROPERTY)) {
    out.name = or_empty(icalproperty_get_name(name));
  }
  for (icalcomponent* event = icalcomponent_get_first_component(calendar.get(), ICAL_VEVENT_COMPONENT);
       event != nullptr; event = icalcomponent_get_next_component(calendar.get(), ICAL_VEVENT_COMPONENT)) {
    out.broken += errors_in(event);
    ReadEvent read;
    read.uid = or_empty(icalcomponent_get_uid(event));
    read.stamp = icaltime_as_ical_string(icalcomponent_get_dtstamp(event));
    const icaltimetype start = icalcomponent_get_dtstart(event);
    read.start = icaltime_as_ical_string(start);
    read.end = icaltime_as_ical_string(icalcomponent_get_dtend(event));
    read.floating = icaltime_get_timezone(start) == nullptr && !icaltime_is_utc(start);
    read.summary = or_empty(icalcomponent_get_summary(event));
    read.location = or_empty(icalcomponent_get_location(event));
    read.description = or_empty(icalcomponent_get_description(event));
    out.events.push_back(read);
  }
  icalrestriction_check(calendar.get());
  out.broken += errors_in(calendar.get());
  return out;
}

// Lines of RFC 5545, 3.1: CRLF, at most 75 octets, no character torn.
std::string fault_of_lines(const std::string& text) {
  if (!text.ends_with("\r\n")) return "no CRLF at the end";
  std::size_t from = 0;
  while (from < text.size()) {
    const std::size_t to = text.find("\r\n", from);
    const std::string line = text.substr(from, to - from);
    if (line.size() > 75) return "a line of " + std::to_string(line.size()) + " octets: " + line;
    if (line.find_first_of("\r\n") != std::string::npos) return "a bare CR or LF in " + line;
    if (!line.empty() && (static_cast<unsigned char>(line[line[0] == ' ' ? 1 : 0]) & 0xC0) == 0x80) {
      return "a torn character in " + line;
    }
    from = to + 2;
  }
  return "";
}

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
