#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>

#include "core/people/instruction.h"
#include "core/people/read_restrictions.h"

namespace lanework::people {
namespace {

using catalogue::BodyArea;
using catalogue::StressKind;

const Date kTonight = *make_date(2026, 11, 26);

Result<Restrictions> read(const std::string& text) {
  return read_restrictions(parse_toml("restrictions.toml", text).value(), {"Q07", "Q14"}, {"U13", "U15"});
}

TEST(Restriction, HoldsToTheEndOfItsLastDay) {
  Restriction restriction;
  restriction.until = make_date(2026, 12, 3);
  EXPECT_TRUE(holds_on(restriction, kTonight));
  EXPECT_TRUE(holds_on(restriction, *make_date(2026, 12, 3)));
  EXPECT_FALSE(holds_on(restriction, *make_date(2026, 12, 4)));
}

TEST(Restriction, AReviewDateLiftsNothing) {
  EXPECT_TRUE(rc::check([] {
    Restriction restriction;
    restriction.review = Date{*rc::gen::inRange(20000, 22000)};
    const Date day{*rc::gen::inRange(20000, 22000)};
    RC_ASSERT(holds_on(restriction, day));
    restriction.until = Date{*rc::gen::inRange(20000, 22000)};
    RC_ASSERT(holds_on(restriction, day) == (day.days_since_epoch <= restriction.until->days_since_epoch));
  }));
}

TEST(Instruction, SaysWhatToAvoidAndUntilWhen) {
  Restriction restriction;
  restriction.areas = {BodyArea::kKnee};
  restriction.kinds = {StressKind::kImpact};
  restriction.until = make_date(2026, 12, 3);
  EXPECT_EQ(instruction_for(restriction, kTonight), "no jumping until 3 Dec");
  restriction.kinds = {StressKind::kPressure, StressKind::kImpact, StressKind::kImpact};
  EXPECT_EQ(instruction_for(restriction, kTonight), "no jumping, kneeling or lying until 3 Dec");
  restriction.allowed_grade = 1;
  restriction.kinds = {StressKind::kSpeed};
  restriction.until.reset();
  EXPECT_EQ(instruction_for(restriction, kTonight), "only light fast running");
  restriction.allowed_grade = 2;
  EXPECT_EQ(instruction_for(restriction, kTonight), "no heavy fast running");
  restriction.kinds.clear();
  restriction.allowed_grade = 0;
  EXPECT_EQ(instruction_for(restriction, kTonight), "only what this page names");
  restriction.instruction = "walks instead of running";
  restriction.until = make_date(2027, 12, 3);
  EXPECT_EQ(instruction_for(restriction, kTonight), "walks instead of running until 3 Dec 2027");
}

TEST(Instruction, WordsThatAreNotForTheCoachAreSeen) {
  EXPECT_EQ(private_word_in("no jumping"), "");
  EXPECT_EQ(private_word_in("no kneeling, no headers, stay hipster"), "");
  EXPECT_EQ(private_word_in("Sore KNEES, no jumping"), "knees");
  EXPECT_EQ(private_word_in("no running (hamstring strain)"), "hamstring");
  EXPECT_EQ(private_word_in("asthma"), "asthma");
}

TEST(ReadRestrictions, ReadsPlayersAndSquads) {
  const auto result = read(R"(
as_known = "Sunday 20:10"
[[restriction]]
player = "Q14"
areas = ["knee", "ankle"]
kinds = ["impact", "twist"]
allowed = "light"
until = 2026-12-03
review = 2026-12-01
instruction = "no jumping"
[[restriction]]
squad = "U13"
kinds = ["speed"]
sits_out = false
)");
  ASSERT_TRUE(result.ok()) << to_line(result.faults()[0]);
  const Restrictions& restrictions = result.value();
  EXPECT_EQ(restrictions.as_known, "Sunday 20:10");
  ASSERT_EQ(restrictions.list.size(), 2U);
  const Restriction& one = restrictions.list[0];
  EXPECT_EQ(one.player, "Q14");
  EXPECT_TRUE(one.squad.empty());
  EXPECT_EQ(one.areas, (std::vector{BodyArea::kKnee, BodyArea::kAnkle}));
  EXPECT_EQ(one.kinds, (std::vector{StressKind::kImpact, StressKind::kTwist}));
  EXPECT_EQ(one.allowed_grade, 1);
  EXPECT_EQ(one.until, make_date(2026, 12, 3));
  EXPECT_EQ(one.review, make_date(2026, 12, 1));
  EXPECT_FALSE(one.sits_out);
  EXPECT_EQ(one.instruction, "no jumping");
  const Restriction& other = restrictions.list[1];
  EXPECT_TRUE(other.player.empty());
  EXPECT_EQ(other.squad, "U13");
  EXPECT_TRUE(other.areas.empty());
  EXPECT_EQ(other.allowed_grade, 0);
}

TEST(ReadRestrictions, WhatOnlyCountsBarsNothingBesides) {
  const auto result = read(R"(
[[restriction]]
player = "Q14"
landings_percent = 50
[[restriction]]
player = "Q07"
kinds = ["impact"]
allowed = "light"
landings_percent = 0
new_eccentric = false
[[restriction]]
player = "Q07"
kinds = ["impact"]
new_eccentric = false
)");
  ASSERT_TRUE(result.ok()) << to_line(result.faults()[0]);
  const std::vector<Restriction>& list = result.value().list;
  EXPECT_EQ(list[0].landings_percent, 50);
  EXPECT_EQ(list[0].allowed_grade, 3);
  EXPECT_EQ(instruction_for(list[0], kTonight), "fewer jumps");
  EXPECT_EQ(list[1].allowed_grade, 1);
  EXPECT_EQ(list[1].landings_percent, 0);
  EXPECT_FALSE(list[1].new_eccentric_ok);
  EXPECT_EQ(instruction_for(list[1], kTonight), "only light jumping; no landings; no new slow-lowering drill");
  EXPECT_EQ(list[2].allowed_grade, 0);
  EXPECT_EQ(instruction_for(list[2], kTonight), "no jumping; no new slow-lowering drill");
}

TEST(ReadRestrictions, WhatIsCountedIsCountedForOnePlayer) {
  const auto result = read("[[restriction]]\nsquad = \"U13\"\nlandings_percent = 50\n");
  ASSERT_FALSE(result.ok());
  EXPECT_EQ(result.faults().at(0).place.field, "restriction.1.landings_percent");
  const auto beyond = read("[[restriction]]\nplayer = \"Q14\"\nlandings_percent = 101\n");
  ASSERT_FALSE(beyond.ok());
  EXPECT_EQ(beyond.faults().at(0).code, FaultCode::kOutOfRange);
}

TEST(ReadRestrictions, AnEmptyDocumentRestrictsNobody) { EXPECT_TRUE(read("").value().list.empty()); }

TEST(ReadRestrictions, NamesEveryFault) {
  const auto result = read(R"([[restriction]]
player = "Q99"
areas = ["knees"]
until = "soon"
[[restriction]]
kinds = ["jumping"]
[[restriction]]
player = "Q14"
squad = "U13"
instruction = "torn, no jumping"
[[restriction]]
squad = "U19"
allowed = "some"
extra = 1
)");
  ASSERT_FALSE(result.ok());
  std::vector<std::string> lines;
  for (const Fault& fault : result.faults()) lines.push_back(to_line(fault));
  const auto expect = [&](FaultCode code, const std::string& field, int line) {
    const bool found = std::any_of(result.faults().begin(), result.faults().end(), [&](const Fault& fault) {
      return fault.code == code && fault.place.field == field && fault.place.line == line;
    });
    EXPECT_TRUE(found) << field << "\n" << ::testing::PrintToString(lines);
  };
  expect(FaultCode::kUnknownName, "restriction.1.player", 2);
  expect(FaultCode::kUnknownName, "restriction.1.areas", 3);
  expect(FaultCode::kBadDate, "restriction.1.until", 4);
  expect(FaultCode::kMissing, "restriction.2.player", 5);
  expect(FaultCode::kUnknownName, "restriction.2.kinds", 6);
  expect(FaultCode::kContradiction, "restriction.3.squad", 9);
  expect(FaultCode::kContradiction, "restriction.3.instruction", 10);
  expect(FaultCode::kUnknownName, "restriction.4.squad", 12);
  expect(FaultCode::kUnknownName, "restriction.4.allowed", 13);
  expect(FaultCode::kUnknownKey, "restriction.4.extra", 14);
  EXPECT_EQ(lines.size(), 10U) << ::testing::PrintToString(lines);
}

}  // namespace
}  // namespace lanework::people
