// The standing keys of a squad file: its week, its matches, what is locked.
#include <gtest/gtest.h>

#include <ostream>

#include "tests/session/sample_squad.h"

namespace lanework::session::test {
namespace {

std::string week_only() {
  const std::string text = least_squad();
  return text.substr(0, text.find("[slot]")) + "[[week]]\nweekday = \"tuesday\"\nstart = 18:00:00\nminutes = 17.5\n";
}

TEST(Weekly, EverythingStatedIsRead) {
  const auto read = squad_of(
      "matches = [2026-12-12, 2026-11-28]\naway_days = [2026-12-10, 2026-12-08]\n"
      "match_day_routine = \"first-steps\"\nexpected_turnout = 14\nfree_composition = true\n" +
      week_only() +
      "[[week]]\nweekday = \"monday\"\nstart = 19:00:00\nminutes = 20\nstrip = \"north\"\nlanes = 1\n"
      "[[match]]\ndate = 2026-12-05\nstart = 10:30:00\nopponent = \"Colts\"\nminutes = 12\naway = true\n"
      "[locks]\npins = [{ drill = \"side-plank\" }]\nbans = [\"squat\"]\n"
      "[[rung]]\ndrill = \"squat\"\nrung = \"right-angle\"\nfrom = 2026-12-14\n"
      "[[rung]]\ndrill = \"squat\"\nrung = \"half-way\"\nfrom = 2026-12-07\n");
  ASSERT_TRUE(read) << to_line(read.faults().front());
  EXPECT_FALSE(read.value().has_slot);
  const Weekly& weekly = read.value().weekly;
  ASSERT_EQ(weekly.slots.size(), 2U);
  EXPECT_EQ(weekly.slots[0].weekday, Weekday::kMonday);
  EXPECT_EQ(weekly.slots[0].strip, "north");
  EXPECT_EQ(weekly.slots[0].lanes, 1);
  EXPECT_EQ(to_text(weekly.slots[1].start), "18:00");
  EXPECT_EQ(weekly.slots[1].length.count, 1050);
  EXPECT_EQ(weekly.slots[1].lanes, 0);
  ASSERT_EQ(weekly.matches.size(), 3U);
  EXPECT_EQ(to_iso(weekly.matches[0].date), "2026-11-28");
  EXPECT_FALSE(weekly.matches[0].start);
  EXPECT_EQ(to_text(*weekly.matches[1].start), "10:30");
  EXPECT_EQ(weekly.matches[1].opponent, "Colts");
  EXPECT_EQ(weekly.matches[1].length->count, 720);
  EXPECT_TRUE(weekly.matches[1].away);
  ASSERT_EQ(weekly.away_days.size(), 2U);
  EXPECT_EQ(to_iso(weekly.away_days[0]), "2026-12-08");
  EXPECT_EQ(weekly.match_day_routine, "first-steps");
  EXPECT_EQ(weekly.expected_turnout, 14);
  EXPECT_TRUE(weekly.free_composition);
  EXPECT_EQ(weekly.locks.pins.size(), 1U);
  EXPECT_EQ(weekly.locks.bans, std::vector<std::string>{"squat"});
  ASSERT_EQ(weekly.rungs.size(), 2U);
  EXPECT_EQ(weekly.rungs[0].rung, "half-way");
  EXPECT_EQ(to_iso(weekly.rungs[1].from), "2026-12-14");
}

TEST(Weekly, AnEveningNeedsNoneOfItAndItChangesNoEvening) {
  const auto without = squad_of(least_squad());
  const auto with = squad_of(least_squad() + "[[week]]\nweekday = \"tuesday\"\nstart = 18:00:00\nminutes = 20\n");
  ASSERT_TRUE(without && with);
  EXPECT_TRUE(with.value().has_slot);
  EXPECT_EQ(with.value().slot, without.value().slot);
  EXPECT_TRUE(without.value().weekly.slots.empty());
  EXPECT_FALSE(without.value().weekly.free_composition);
  EXPECT_EQ(without.value().weekly.match_day_routine, "match-day");
}

TEST(Weekly, AFileWithItsWeekOnlyIsNoEvening) {
  const auto squad = squad_of(week_only());
  ASSERT_TRUE(squad) << to_line(squad.faults().front());
  const auto evening = make_evening(squad.value(), Strip(), sample_roster(), {});
  ASSERT_FALSE(evening);
  EXPECT_EQ(
      to_line(evening.faults().front()),
      "squad.toml: slot: found a squad file with its week only, expected a [slot] with date, start and minutes for "
      "one evening");
}

struct Mistake {
  std::string name;
  std::string more;  // behind the least squad file, from line 9 on
  std::string line;
};
void PrintTo(const Mistake& mistake, std::ostream* out) { *out << mistake.name; }

class WeeklyMistake : public testing::TestWithParam<Mistake> {};

TEST_P(WeeklyMistake, IsOneLineAtItsPlace) {
  EXPECT_EQ(squad_faults(least_squad() + GetParam().more), "squad.toml:" + GetParam().line + "\n");
}

std::string name_of(const testing::TestParamInfo<Mistake>& info) { return info.param.name; }

const char* const kWeek = "[[week]]\nweekday = \"tuesday\"\nstart = 18:00:00\nminutes = 20\n";

INSTANTIATE_TEST_SUITE_P(
    All, WeeklyMistake,
    testing::Values(
        Mistake{"NoWeekday", "[[week]]\nstart = 18:00:00\nminutes = 20\n",
                "9:1: week.1.weekday: found nothing, expected text"},
        Mistake{"NoSuchWeekday", "[[week]]\nweekday = \"tues\"\nstart = 18:00:00\nminutes = 20\n",
                "10:1: week.1.weekday: found 'tues', expected one of monday, tuesday, wednesday, thursday, friday, "
                "saturday, sunday"},
        Mistake{"NoStart", "[[week]]\nweekday = \"tuesday\"\nminutes = 20\n",
                "9:1: week.1.start: found nothing, expected a time of day such as 18:00:00"},
        Mistake{"TooShort", "[[week]]\nweekday = \"tuesday\"\nstart = 18:00:00\nminutes = 4\n",
                "12:1: week.1.minutes: found 4, expected a number from 5 to 60"},
        Mistake{"NoLane", std::string(kWeek) + "lanes = 0\n",
                "13:1: week.1.lanes: found 0, expected a whole number from 1 to 12"},
        Mistake{"UnknownKey", std::string(kWeek) + "strips = \"north\"\n",
                "13:1: week.1.strips: found 'strips', expected one of weekday, start, minutes, strip, lanes"},
        Mistake{"MatchWithoutDate", "[[match]]\nopponent = \"Colts\"\n",
                "9:1: match.1.date: found a match without a date, expected a date such as 2026-11-28"},
        Mistake{"MatchOnNoDay", "[[match]]\ndate = \"Saturday\"\n",
                "10:1: match.1.date: found 'Saturday', expected a date such as 2026-11-26"},
        Mistake{"MinutesWithoutKickOff", "[[match]]\ndate = 2026-11-28\nminutes = 12\n",
                "11:1: match.1.minutes: found minutes of a warm-up without a kick-off, expected start, the time of the "
                "kick-off, too"},
        Mistake{"TwoMatchesADay", "[[match]]\ndate = 2026-11-28\n[[match]]\ndate = 2026-11-28\n",
                "9:3: match: found two matches on 2026-11-28, expected one a day (a tournament is one match here)"},
        Mistake{"UnknownDrillLocked", "[locks]\nbans = [\"moon-walk\"]\n",
                "10:1: locks.bans: found 'moon-walk', expected the id of a drill of the catalogue ('lanework catalogue "
                "list' shows them)"},
        Mistake{
            "RungOfNoDrill", "[[rung]]\ndrill = \"moon-walk\"\nrung = \"easy\"\nfrom = 2026-12-07\n",
            "10:1: rung.1.drill: found 'moon-walk', expected the id of a drill of the catalogue ('lanework catalogue "
            "list' shows them)"},
        Mistake{"RungUnknown", "[[rung]]\ndrill = \"side-plank\"\nrung = \"on-fire\"\nfrom = 2026-12-07\n",
                "11:1: rung.1.rung: found 'on-fire', expected one of knees-down, legs-straight, top-leg-up"},
        Mistake{"RungFromNoDay", "[[rung]]\ndrill = \"side-plank\"\nrung = \"knees-down\"\n",
                "9:1: rung.1.from: found nothing, expected the day from which it holds, such as 2026-12-07"},
        Mistake{"RungTwice",
                "[[rung]]\ndrill = \"side-plank\"\nrung = \"knees-down\"\nfrom = 2026-12-07\n"
                "[[rung]]\ndrill = \"side-plank\"\nrung = \"top-leg-up\"\nfrom = 2026-12-07\n",
                "14:1: rung.2.drill: found 'side-plank' twice from 2026-12-07, expected each drill once a day"}),
    name_of);

}  // namespace
}  // namespace lanework::session::test
