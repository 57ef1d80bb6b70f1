#include "core/release/counts.h"

#include <gtest/gtest.h>

#include "tests/release/club_of_test.h"

namespace lanework::release {
namespace {

using test::hurt;
using test::kAutumn;
using test::kRows;
using test::kSeason;

TEST(Counts, InjuriesByEachOfThreeTablesAndByHowManyPeople) {
  ledger::State state;
  hurt(state, "Q01", "u13", "2026-09-10", "match", "knee");
  hurt(state, "Q01", "u13", "2026-10-10", "match", "knee");
  hurt(state, "Q02", "u16", "2026-10-11", "training", "ankle");
  hurt(state, "Q03", "u16", "2027-02-11", "training", "ankle");
  const Counts counts = counts_of(state, kAutumn, {}, kRows);
  EXPECT_EQ(counts.all, (Count{3, 2}));
  EXPECT_EQ(counts.of(Table::kSquads).at("u13"), (Count{2, 1}));
  EXPECT_EQ(counts.of(Table::kSquads).at("u11"), (Count{0, 0})) << "a row all the same";
  EXPECT_EQ(counts.of(Table::kSettings).at("match"), (Count{2, 1}));
  EXPECT_EQ(counts.of(Table::kRegions).at("ankle"), (Count{1, 1}));
  EXPECT_EQ(counts_of(state, kSeason, {kAutumn}, kRows).all, (Count{1, 1})) << "without the autumn";
}

TEST(Counts, WhoeverDidNotAgreeToStatisticsIsNotCounted) {
  ledger::State state;
  hurt(state, "Q01", "u13", "2026-09-10", "match", "knee");
  hurt(state, "Q02", "u13", "2026-09-11", "match", "knee");
  test::answer(state, "Q02", "withdrawn");
  hurt(state, "Q03", "u13", "2026-09-12", "match", "knee");
  state.consents.erase({"Q03", std::string(ledger::kStatistics), "guardian", {}});  // never asked
  EXPECT_EQ(counts_of(state, kAutumn, {}, kRows).all, (Count{1, 1}));
}

TEST(Counts, WhatNoRowHasIsNotStatedAndASquadThatWasDissolvedKeepsItsRow) {
  ledger::State state;
  hurt(state, "Q01", "u19", "2026-09-10", "", "elbow");
  const Counts counts = counts_of(state, kAutumn, {}, kRows);
  EXPECT_EQ(counts.of(Table::kSquads).at("u19"), (Count{1, 1}));
  EXPECT_EQ(counts.of(Table::kSettings).at(kNotStated), (Count{1, 1}));
  EXPECT_EQ(counts.of(Table::kRegions).at(kNotStated), (Count{1, 1}));
}

TEST(Counts, SessionsByWhatWasTold) {
  ledger::State state;
  state.sessions[{"u13", "2026-09-01", "18:00"}] = test::session("held", "most", 60, 12);
  state.sessions[{"u13", "2026-09-03", "18:00"}] = test::session("cut-short", "few");
  state.sessions[{"u13", "2026-09-08", "18:00"}] = test::session("missed", "");
  state.sessions[{"u13", "2026-09-10", "18:00"}] = test::session("held", "nobody");
  state.sessions[{"u13", "2026-09-15", "18:00"}];  // begun, and nothing told
  state.sessions[{"u13", "2027-09-15", "18:00"}] = test::session("held", "most");
  EXPECT_EQ(counts_of(state, kAutumn, {}, kRows).done.at("u13"), (Done{1, 1, 2, 1, 0, 1, 1, 720}));
}

TEST(Counts, TogetherTakesTheLargerNumberOfPeopleSinceNobodyKnowsWhoIsInBoth) {
  Counts one;
  one.all = {6, 5};
  one.of(Table::kSquads)["u13"] = {6, 5};
  Counts other;
  other.all = {3, 3};
  other.of(Table::kSquads)["u16"] = {3, 3};
  const Counts both = together(one, other);
  EXPECT_EQ(both.all, (Count{9, 5}));
  EXPECT_EQ(both.of(Table::kSquads).at("u16"), (Count{3, 3}));
}

TEST(Counts, SmallIsFewInjuriesOrFewPeopleAndNoneToo) {
  EXPECT_TRUE(is_small({0, 0}));
  EXPECT_TRUE(is_small({4, 4}));
  EXPECT_TRUE(is_small({9, 4}));
  EXPECT_FALSE(is_small({5, 5}));
}

}  // namespace
}  // namespace lanework::release
