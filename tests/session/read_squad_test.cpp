// Squad files: what stands there is what comes out, and every mistake is one line at its place.
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include "tests/session/sample_squad.h"

namespace lanework::session::test {
namespace {

TEST(SquadFile, TheLeastIsEnough) {
  const auto read = squad_of(least_squad());
  ASSERT_TRUE(read) << squad_faults(least_squad());
  const Squad& squad = read.value();
  EXPECT_EQ(squad.club, "");
  EXPECT_EQ(squad.name, "Under-13");
  EXPECT_EQ(squad.files.restrictions, "");
  EXPECT_EQ(to_iso(squad.date), "2026-11-26");
  EXPECT_EQ(to_text(squad.start), "18:00");
  EXPECT_EQ(squad.slot.count, 1200);
  EXPECT_FALSE(squad.days_to_match || squad.turnout || squad.age);
  EXPECT_EQ(squad.late, 0);
  EXPECT_TRUE(squad.away.empty() && squad.bans.empty() && squad.pins.empty() && squad.taught.empty());
  EXPECT_FALSE(squad.free_composition || squad.more_than_routine);
  EXPECT_EQ(squad.seed, 1U);
  EXPECT_EQ(squad.pace_thousandths, 1000);
  EXPECT_EQ(squad.kit.cones + squad.kit.balls + squad.kit.mats, 0);
  EXPECT_EQ(squad.partners.measure, people::PartnerMeasure::kAge);
  EXPECT_EQ(squad.weights.dose_step, 4);
  EXPECT_EQ(squad.weights.rung_step, 8);
  EXPECT_EQ(squad.weights.left_out, 8);
  EXPECT_EQ(squad.weights.new_drill, 12);
}

TEST(SquadFile, EverythingStatedIsRead) {
  const auto read = squad_of("club = \"Quillmere Juniors\"\nin_roster = \"U13\"\nage = 12\n" +
                             exchanged(least_squad(), "minutes = 20", "minutes = 17.5\ndays_to_match = 0") +
                             "[tonight]\nturnout = 14\nlate = 2\naway = [\"P2\"]\nbans = [\"squat\"]\n"
                             "pins = [{ drill = \"side-plank\", rung = \"knees-down\", sets = 1, amount = 20 },\n"
                             "        { drill = \"strides\" }]\n"
                             "free_composition = true\nmore_than_routine = true\nseed = 7\n"
                             "[kit]\ncones = 16\nballs = 10\nmats = 3\n[taught]\nside-plank = 8\n"
                             "[clock]\npace = 1.035\n"
                             "[partners]\nmeasure = \"body-mass\"\nforbidden = [[\"P1\", \"P3\"]]\n"
                             "[weights]\ndose_step = 1.25\nrung_step = 1\nleft_out = 5\nnew_drill = 0.25\n");
  ASSERT_TRUE(read) << to_line(read.faults().front());
  const Squad& squad = read.value();
  EXPECT_EQ(squad.club, "Quillmere Juniors");
  EXPECT_EQ(squad.in_roster, "U13");
  EXPECT_EQ(squad.age, 12);
  EXPECT_EQ(squad.slot.count, 1050);
  EXPECT_EQ(squad.days_to_match, 0);
  EXPECT_EQ(squad.turnout, 14);
  EXPECT_EQ(squad.late, 2);
  EXPECT_EQ(squad.away, std::vector<std::string>{"P2"});
  EXPECT_EQ(squad.bans, std::vector<std::string>{"squat"});
  ASSERT_EQ(squad.pins.size(), 2U);
  EXPECT_EQ(squad.pins[0].rung, "knees-down");
  EXPECT_EQ(squad.pins[0].sets, 1);
  EXPECT_EQ(squad.pins[0].amount, 20);
  EXPECT_EQ(squad.pins[1].rung, "");
  EXPECT_EQ(squad.pins[1].sets, 0);
  EXPECT_TRUE(squad.free_composition && squad.more_than_routine);
  EXPECT_EQ(squad.seed, 7U);
  EXPECT_EQ(squad.kit.cones, 16);
  EXPECT_EQ(squad.kit.balls, 10);
  EXPECT_EQ(squad.kit.mats, 3);
  EXPECT_EQ(squad.taught.at("side-plank").times, 8);
  EXPECT_EQ(squad.pace_thousandths, 1035);
  EXPECT_EQ(squad.partners.measure, people::PartnerMeasure::kBodyMass);
  EXPECT_EQ(squad.partners.forbidden, (std::vector<std::pair<std::string, std::string>>{{"P1", "P3"}}));
  EXPECT_EQ(squad.weights.dose_step, 5);
  EXPECT_EQ(squad.weights.rung_step, 4);
  EXPECT_EQ(squad.weights.left_out, 20);
  EXPECT_EQ(squad.weights.new_drill, 1);
}

struct Mistake {
  std::string name;
  std::string piece;  // of the least squad file; empty adds 'with' at the end
  std::string with;
  std::string line;
};

void PrintTo(const Mistake& mistake, std::ostream* out) { *out << mistake.name; }

class SquadMistake : public testing::TestWithParam<Mistake> {};

TEST_P(SquadMistake, IsOneLineAtItsPlace) {
  const Mistake& mistake = GetParam();
  const std::string text =
      mistake.piece.empty() ? least_squad() + mistake.with : exchanged(least_squad(), mistake.piece, mistake.with);
  EXPECT_EQ(squad_faults(text), "squad.toml:" + mistake.line + "\n");
}

std::string mistake_name(const testing::TestParamInfo<Mistake>& info) { return info.param.name; }

INSTANTIATE_TEST_SUITE_P(
    Names, SquadMistake,
    testing::Values(
        Mistake{"NoName", "name = \"Under-13\"", "", "1:1: name: found nothing, expected text"},
        Mistake{"EmptyName", "\"Under-13\"", "\"\"", "1:1: name: found empty text, expected text"},
        Mistake{"NameIsNumber", "\"Under-13\"", "13", "1:1: name: found 13, expected text"},
        Mistake{"NoRoster", "roster = \"roster.csv\"\n", "", "1:1: roster: found nothing, expected text"},
        Mistake{"NoRoutine", "routine = \"early-teens\"\n", "", "1:1: routine: found nothing, expected text"},
        Mistake{"NoStrip", "strip = \"strip.toml\"\n", "", "1:1: strip: found nothing, expected text"},
        Mistake{"AgeSeven", "[slot]", "age = 7\n[slot]", "5:1: age: found 7, expected a whole number from 8 to 19"},
        Mistake{"AgeInWords", "[slot]", "age = \"twelve\"\n[slot]",
                "5:1: age: found 'twelve', expected a whole number from 8 to 19"},
        Mistake{"PaceZero", "", "[clock]\npace = 0\n", "10:1: clock.pace: found 0, expected a number from 0.5 to 2"}),
    mistake_name);

INSTANTIATE_TEST_SUITE_P(
    Slot, SquadMistake,
    testing::Values(Mistake{"NoSlot", "[slot]\ndate = 2026-11-26\nstart = 18:00:00\nminutes = 20\n", "",
                            "1:1: slot: found nothing, expected a table with date, start and minutes"},
                    Mistake{"SlotIsNumber", "[slot]\ndate = 2026-11-26\nstart = 18:00:00\nminutes = 20\n",
                            "slot = 20\n", "5:1: slot: found 20, expected a table"},
                    Mistake{"NoDate", "date = 2026-11-26\n", "",
                            "5:2: slot.date: found nothing, expected a date such as 2026-11-26"},
                    Mistake{"DateInWords", "2026-11-26", "\"Thursday\"",
                            "6:1: slot.date: found 'Thursday', expected a date such as 2026-11-26"},
                    Mistake{"DateWithTime", "2026-11-26", "2026-11-26T18:00:00",
                            "6:1: slot.date: found '2026-11-26T18:00:00', expected a date such as 2026-11-26"},
                    Mistake{"NoStart", "start = 18:00:00\n", "",
                            "5:2: slot.start: found nothing, expected a time of day such as 18:00:00"},
                    Mistake{"StartInWords", "18:00:00", "\"six\"",
                            "7:1: slot.start: found 'six', expected a time of day such as 18:00:00"},
                    Mistake{"NoMinutes", "minutes = 20\n", "",
                            "5:2: slot.minutes: found nothing, expected a number from 5 to 60"},
                    Mistake{"NegativeMinutes", "minutes = 20", "minutes = -20",
                            "8:1: slot.minutes: found -20, expected a number from 5 to 60"},
                    Mistake{"ZeroMinutes", "minutes = 20", "minutes = 0",
                            "8:1: slot.minutes: found 0, expected a number from 5 to 60"},
                    Mistake{"FourMinutes", "minutes = 20", "minutes = 4.9",
                            "8:1: slot.minutes: found 4.9, expected a number from 5 to 60"},
                    Mistake{"HourAndAMinute", "minutes = 20", "minutes = 61",
                            "8:1: slot.minutes: found 61, expected a number from 5 to 60"},
                    Mistake{"MinutesInWords", "minutes = 20", "minutes = \"20 min\"",
                            "8:1: slot.minutes: found '20 min', expected a number from 5 to 60"},
                    Mistake{"MatchYesterday", "minutes = 20", "minutes = 20\ndays_to_match = -1",
                            "9:1: slot.days_to_match: found -1, expected a whole number from 0 to 60"},
                    Mistake{"UnknownKey", "minutes = 20", "minutes = 20\nminutos = 20",
                            "9:1: slot.minutos: found 'minutos', expected one of date, start, minutes, days_to_match"}),
    mistake_name);

INSTANTIATE_TEST_SUITE_P(
    Tonight, SquadMistake,
    testing::Values(
        Mistake{"TurnoutZero", "", "[tonight]\nturnout = 0\n",
                "10:1: tonight.turnout: found 0, expected a whole number from 2 to 40"},
        Mistake{"TurnoutOne", "", "[tonight]\nturnout = 1\n",
                "10:1: tonight.turnout: found 1, expected a whole number from 2 to 40"},
        Mistake{"TurnoutFortyOne", "", "[tonight]\nturnout = 41\n",
                "10:1: tonight.turnout: found 41, expected a whole number from 2 to 40"},
        Mistake{"TurnoutSixty", "", "[tonight]\nturnout = 60\n",
                "10:1: tonight.turnout: found 60, expected a whole number from 2 to 40"},
        Mistake{"TurnoutHalf", "", "[tonight]\nturnout = 13.5\n",
                "10:1: tonight.turnout: found 13.5, expected a whole number from 2 to 40"},
        Mistake{"LateNegative", "", "[tonight]\nlate = -1\n",
                "10:1: tonight.late: found -1, expected a whole number from 0 to 40"},
        Mistake{"AwayUnknown", "", "[tonight]\naway = [\"P1\", \"Q77\"]\n",
                "10:1: tonight.away: found 'Q77', expected the id of a player of the roster"},
        Mistake{"AwayIsText", "", "[tonight]\naway = \"P1\"\n", "10:1: tonight.away: found 'P1', expected a list"},
        Mistake{"AwayOfNumbers", "", "[tonight]\naway = [7]\n",
                "10:1: tonight.away: found 7, expected a list of texts"},
        Mistake{"BanUnknown", "", "[tonight]\nbans = [\"moon-walk\"]\n",
                "10:1: tonight.bans: found 'moon-walk', expected the id of a drill of the catalogue ('lanework "
                "catalogue list' shows them)"},
        Mistake{"FreeInWords", "", "[tonight]\nfree_composition = \"yes\"\n",
                "10:1: tonight.free_composition: found 'yes', expected true or false"},
        Mistake{"SeedNegative", "", "[tonight]\nseed = -1\n",
                "10:1: tonight.seed: found -1, expected a whole number from 0 to 1000000000"}),
    mistake_name);

INSTANTIATE_TEST_SUITE_P(
    Pins, SquadMistake,
    testing::Values(
        Mistake{
            "UnknownDrill", "", "[tonight]\npins = [{ drill = \"moon-walk\" }]\n",
            "10:11: tonight.pins.1.drill: found 'moon-walk', expected the id of a drill of the catalogue ('lanework "
            "catalogue list' shows them)"},
        Mistake{"NoDrill", "", "[tonight]\npins = [{ rung = \"knees-down\" }]\n",
                "10:9: tonight.pins.1.drill: found nothing, expected text"},
        Mistake{"UnknownRung", "", "[tonight]\npins = [{ drill = \"side-plank\", rung = \"one-hand\" }]\n",
                "10:33: tonight.pins.1.rung: found 'one-hand', expected one of knees-down, legs-straight, top-leg-up"},
        Mistake{"UnknownDose", "", "[tonight]\npins = [{ drill = \"side-plank\", sets = 9, amount = 90 }]\n",
                "10:33: tonight.pins.1.sets: found 9 and 90, expected sets and amount of one of the drill's doses: 1 "
                "and 10, 1 and 15, 1 and 20, 2 and 15, 2 and 20"},
        Mistake{"HalfADose", "", "[tonight]\npins = [{ drill = \"side-plank\", amount = 20 }]\n",
                "10:9: tonight.pins.1.sets: found sets or amount alone, expected both, or neither"},
        Mistake{"NegativeAmount", "", "[tonight]\npins = [{ drill = \"side-plank\", sets = 1, amount = -20 }]\n",
                "10:43: tonight.pins.1.amount: found -20, expected a whole number from 1 to 600"},
        Mistake{"PinIsText", "", "[tonight]\npins = [\"side-plank\"]\n",
                "10:1: tonight.pins: found 'side-plank', expected a list of tables"},
        Mistake{"PinnedTwice", "", "[tonight]\npins = [{ drill = \"squat\" }, { drill = \"squat\" }]\n",
                "10:32: tonight.pins.2.drill: found 'squat' twice, expected each drill once"}),
    mistake_name);

INSTANTIATE_TEST_SUITE_P(
    Rest, SquadMistake,
    testing::Values(
        Mistake{"ConesNegative", "", "[kit]\ncones = -4\n",
                "10:1: kit.cones: found -4, expected a whole number from 0 to 500"},
        Mistake{"KitUnknown", "", "[kit]\nbibs = 4\n",
                "10:1: kit.bibs: found 'bibs', expected one of cones, balls, mats"},
        Mistake{"TaughtUnknown", "", "[taught]\nmoon-walk = 4\n",
                "10:1: taught.moon-walk: found 'moon-walk', expected the id of a drill of the catalogue ('lanework "
                "catalogue list' shows them)"},
        Mistake{"TaughtNegative", "", "[taught]\nsquat = -1\n",
                "10:1: taught.squat: found -1, expected a whole number from 0 to 100000"},
        Mistake{"MeasureUnknown", "", "[partners]\nmeasure = \"height\"\n",
                "10:1: partners.measure: found 'height', expected one of age, size-group, body-mass"},
        Mistake{"ForbiddenUnknown", "", "[partners]\nforbidden = [[\"P1\", \"Q77\"]]\n",
                "10:1: partners.forbidden: found 'Q77', expected the id of a player of the roster"},
        Mistake{"ForbiddenAlone", "", "[partners]\nforbidden = [[\"P1\"]]\n",
                "10:1: partners.forbidden: found a list of 1, expected pairs of two player ids"},
        Mistake{"ForbiddenSame", "", "[partners]\nforbidden = [[\"P1\", \"P1\"]]\n",
                "10:1: partners.forbidden: found 'P1' twice, expected two different players"},
        Mistake{"ForbiddenFlat", "", "[partners]\nforbidden = [\"P1\"]\n",
                "10:1: partners.forbidden: found 'P1', expected a list of lists of texts"},
        Mistake{"WeightZero", "", "[weights]\nleft_out = 0\n",
                "10:1: weights.left_out: found 0, expected a number from 0.25 to 5"},
        Mistake{"WeightHuge", "", "[weights]\nnew_drill = 1e300\n",
                "10:1: weights.new_drill: found 1e+300, expected a number from 0.25 to 5"},
        Mistake{"UnknownTable", "", "[tonigth]\nlate = 1\n",
                "9:2: tonigth: found 'tonigth', expected one of club, name, roster, in_roster, routine, strip, "
                "restrictions, catalogue, age, clock, slot, tonight, kit, taught, partners, weights, week, "
                "match, matches, away_days, match_day_routine, expected_turnout, free_composition, locks, rung"}),
    mistake_name);

TEST(SquadFile, AllMistakesAreToldAtOnce) {
  const std::string text = exchanged(exchanged(least_squad(), "minutes = 20", "minutes = -3"), "\"Under-13\"", "\"\"") +
                           "[tonight]\nturnout = 60\naway = [\"Q1\", \"Q2\"]\n[kit]\ncones = \"many\"\n";
  const auto squad = squad_of(text);
  ASSERT_FALSE(squad);
  EXPECT_EQ(squad.faults().size(), 6U) << squad_faults(text);
}

// Whatever number stands in a field, it is read or told; never both, never neither.
TEST(SquadFile, AnyNumberIsReadOrTold) {
  EXPECT_TRUE(rc::check([] {
    const auto minutes = *rc::gen::inRange(-100, 200);
    const auto turnout = *rc::gen::inRange(-5, 70);
    const auto late = *rc::gen::inRange(-5, 60);
    const std::string text = exchanged(least_squad(), "minutes = 20", "minutes = " + std::to_string(minutes)) +
                             "[tonight]\nturnout = " + std::to_string(turnout) + "\nlate = " + std::to_string(late) +
                             "\n";
    const int wrong =
        (minutes < 5 || minutes > 60 ? 1 : 0) + (turnout < 2 || turnout > 40 ? 1 : 0) + (late < 0 || late > 40 ? 1 : 0);
    const auto squad = squad_of(text);
    RC_ASSERT(squad.ok() == (wrong == 0));
    if (squad) {
      RC_ASSERT(squad.value().slot.count == 60 * minutes);
      RC_ASSERT(squad.value().turnout == turnout);
      RC_ASSERT(squad.value().late == late);
    } else {
      RC_ASSERT(squad.faults().size() == static_cast<std::size_t>(wrong));
    }
  }));
}

}  // namespace
}  // namespace lanework::session::test
