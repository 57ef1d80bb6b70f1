// The evening put together from squad, strip, roster and restrictions.
#include <gtest/gtest.h>

#include "tests/catalogue/shipped.h"
#include "tests/session/sample_squad.h"

namespace lanework::session::test {
namespace {

const std::string kOfU13 = exchanged(least_squad(), "[slot]", "in_roster = \"U13\"\n[slot]");

Result<Evening> evening_of(const std::string& toml, const std::vector<std::string>& restrictions = {},
                           const std::vector<people::Player>& roster = sample_roster()) {
  const auto squad = squad_of(toml);
  if (!squad) throw std::runtime_error(to_line(squad.faults().front()));
  return make_evening(squad.value(), Strip{}, roster, restrictions_of(restrictions));
}

std::string evening_faults(const std::string& toml, const std::vector<std::string>& restrictions = {},
                           const std::vector<people::Player>& roster = sample_roster()) {
  const auto evening = evening_of(toml, restrictions, roster);
  return evening ? "" : catalogue::test::all_lines(evening.faults());
}

TEST(MakeEvening, CountsWhoIsOfTheSquad) {
  EXPECT_EQ(evening_of(kOfU13).value().turnout, 4);
  EXPECT_EQ(evening_of(least_squad()).value().turnout, 5);
  EXPECT_EQ(evening_of(kOfU13 + "[tonight]\naway = [\"P1\"]\n").value().turnout, 3);
  EXPECT_EQ(evening_of(kOfU13 + "[tonight]\nturnout = 14\n").value().turnout, 14);
}

TEST(MakeEvening, WhoSitsOutIsNotCounted) {
  EXPECT_EQ(evening_of(kOfU13, {"player = \"P2\"\nsits_out = true"}).value().turnout, 3);
  EXPECT_EQ(evening_of(kOfU13, {"player = \"P2\"\nsits_out = false"}).value().turnout, 4);
  // Until its last day, that day included; a review date lifts nothing.
  EXPECT_EQ(evening_of(kOfU13, {"player = \"P2\"\nsits_out = true\nuntil = 2026-11-26"}).value().turnout, 3);
  EXPECT_EQ(evening_of(kOfU13, {"player = \"P2\"\nsits_out = true\nuntil = 2026-11-25"}).value().turnout, 4);
  EXPECT_EQ(evening_of(kOfU13, {"player = \"P2\"\nsits_out = true\nreview = 2026-11-01"}).value().turnout, 3);
  // Somebody of another squad, or who is away anyway, changes nothing.
  EXPECT_EQ(evening_of(kOfU13, {"player = \"P5\"\nsits_out = true"}).value().turnout, 4);
  EXPECT_EQ(evening_of(kOfU13 + "[tonight]\naway = [\"P2\"]\n", {"player = \"P2\"\nsits_out = true"}).value().turnout,
            3);
}

TEST(MakeEvening, AgeIsThatOfTheYoungestWhoComes) {
  EXPECT_EQ(evening_of(kOfU13).value().age, 11);
  EXPECT_EQ(evening_of(kOfU13 + "[tonight]\naway = [\"P2\"]\n").value().age, 12);
  EXPECT_EQ(evening_of(kOfU13, {"player = \"P2\"\nsits_out = true"}).value().age, 12);
  EXPECT_EQ(evening_of(least_squad()).value().age, 10);
  EXPECT_EQ(evening_of(exchanged(kOfU13, "[slot]", "age = 14\n[slot]")).value().age, 14);
}

TEST(MakeEvening, ABirthdayTonightCounts) {
  std::vector<people::Player> roster = sample_roster();
  roster[1].birth = make_date(2014, 11, 26);
  EXPECT_EQ(evening_of(kOfU13, {}, roster).value().age, 12);
  roster[1].birth = make_date(2014, 11, 27);
  EXPECT_EQ(evening_of(kOfU13, {}, roster).value().age, 11);
}

TEST(MakeEvening, StatedAgesServeWhereThereAreNoBirthDates) {
  std::vector<people::Player> roster = sample_roster();
  for (people::Player& player : roster) player.birth.reset();
  roster[2].stated_age = 13;
  EXPECT_EQ(evening_of(kOfU13, {}, roster).value().age, 13);
}

TEST(MakeEvening, NobodyThereIsOneLineAtTheSquad) {
  EXPECT_EQ(evening_faults(exchanged(least_squad(), "[slot]", "in_roster = \"U9\"\n[slot]")),
            "squad.toml:5:1: in_roster: found 0 players tonight, expected 2 to 40 players who take part (does the "
            "roster's squad column say 'U9'?)\n");
  EXPECT_EQ(evening_faults(kOfU13 + "[tonight]\naway = [\"P1\", \"P2\", \"P3\"]\n"),
            "squad.toml:5:1: in_roster: found 1 player tonight, expected 2 to 40 players who take part (does the "
            "roster's squad column say 'U13'?)\n");
  EXPECT_EQ(evening_faults(least_squad(), {}, {}),
            "squad.toml:2:1: roster: found 0 players tonight, expected 2 to 40 players who take part\n");
}

TEST(MakeEvening, FortyAreTheMost) {
  std::vector<people::Player> roster;
  for (int i = 0; i < 60; ++i) {
    roster.push_back(sample_roster()[0]);
    roster.back().id = "R" + std::to_string(i);
  }
  EXPECT_EQ(evening_faults(least_squad(), {}, roster),
            "squad.toml:2:1: roster: found 60 players tonight, expected 2 to 40 players who take part\n");
  roster.resize(41);
  EXPECT_NE(evening_faults(least_squad(), {}, roster), "");
  roster.resize(40);
  EXPECT_EQ(evening_of(least_squad(), {}, roster).value().turnout, 40);
}

TEST(MakeEvening, LateComersAreFewerThanPlayers) {
  EXPECT_EQ(evening_of(kOfU13 + "[tonight]\nlate = 3\n").value().late, 3);
  EXPECT_EQ(evening_faults(kOfU13 + "[tonight]\nlate = 4\n"),
            "squad.toml:11:1: tonight.late: found 4 late of 4, expected fewer late players than players\n");
  EXPECT_EQ(evening_faults(kOfU13 + "[tonight]\nturnout = 6\nlate = 6\n"),
            "squad.toml:12:1: tonight.late: found 6 late of 6, expected fewer late players than players\n");
}

TEST(MakeEvening, AnAgeIsNeeded) {
  std::vector<people::Player> roster = sample_roster();
  for (people::Player& player : roster) player.birth.reset();
  EXPECT_EQ(evening_faults(kOfU13, {}, roster),
            "squad.toml:1:1: age: found no age here and no birth date or age in the roster, expected age in the squad "
            "file, or a birth date column in the roster\n");
  roster[0].stated_age = 7;
  EXPECT_EQ(evening_faults(kOfU13, {}, roster),
            "squad.toml:1:1: age: found a youngest player of 7 years, expected 8 to 19 years (state age in the squad "
            "file if the roster is wrong)\n");
  EXPECT_EQ(evening_of(exchanged(kOfU13, "[slot]", "age = 8\n[slot]"), {}, roster).value().age, 8);
}

TEST(MakeEvening, OnlyTheSquadsOwnRestrictionsBindIt) {
  const auto held = [](const std::string& toml, const std::string& restriction) {
    return evening_of(toml, {restriction}).value().restrictions.size();
  };
  EXPECT_EQ(held(kOfU13, "squad = \"U13\"\nkinds = [\"impact\"]"), 1U);
  EXPECT_EQ(held(kOfU13, "squad = \"Under-13\"\nkinds = [\"impact\"]"), 1U);
  EXPECT_EQ(held(kOfU13, "squad = \"U14\"\nkinds = [\"impact\"]"), 0U);
  EXPECT_EQ(held(kOfU13, "player = \"P1\"\nkinds = [\"impact\"]"), 0U);
  EXPECT_EQ(held(kOfU13, "squad = \"U13\"\nuntil = 2026-11-25"), 0U);
  EXPECT_EQ(held(kOfU13, "squad = \"U13\"\nuntil = 2026-11-26"), 1U);
}

// A squad file that takes the whole roster takes what each squad in it must avoid.
TEST(MakeEvening, AWholeRosterTakesTheRestrictionsOfAllItsSquads) {
  const auto evening = evening_of(least_squad(), {"squad = \"U10\"\nkinds = [\"impact\"]"});
  EXPECT_EQ(evening.value().restrictions.size(), 1U);
}

TEST(MakeEvening, CarriesEverythingElse) {
  const auto evening = evening_of("club = \"Quillmere Juniors\"\n" +
                                  exchanged(kOfU13, "minutes = 20", "minutes = 20\ndays_to_match = 3") +
                                  "[tonight]\nbans = [\"squat\"]\npins = [{ drill = \"strides\" }]\nseed = 9\n"
                                  "free_composition = true\nmore_than_routine = true\n"
                                  "[kit]\nballs = 6\n[taught]\nstrides = 4\n[clock]\npace = 0.9\n"
                                  "[weights]\nleft_out = 3\n");
  ASSERT_TRUE(evening);
  const Evening& e = evening.value();
  EXPECT_EQ(e.club, "Quillmere Juniors");
  EXPECT_EQ(e.squad, "Under-13");
  EXPECT_EQ(to_iso(e.date), "2026-11-26");
  EXPECT_EQ(to_text(e.start), "18:00");
  EXPECT_EQ(e.slot.count, 1200);
  EXPECT_EQ(e.days_to_match, 3);
  EXPECT_EQ(e.bans, std::vector<std::string>{"squat"});
  ASSERT_EQ(e.pins.size(), 1U);
  EXPECT_EQ(e.pins[0].drill, "strides");
  EXPECT_EQ(e.seed, 9U);
  EXPECT_TRUE(e.free_composition && e.more_than_routine);
  EXPECT_EQ(e.kit.balls, 6);
  EXPECT_EQ(e.exposures.at("strides").times, 4);
  EXPECT_EQ(e.pace_thousandths, 900);
  EXPECT_EQ(e.weights.left_out, 12);
}

}  // namespace
}  // namespace lanework::session::test
