// Evenings that were planned, and of how many of them nobody told.
#include "core/release/planned.h"

#include <gtest/gtest.h>

#include "core/release/make_release.h"
#include "core/release/release_text.h"
#include "tests/release/club_of_test.h"

namespace lanework::release {
namespace {

using test::day;
using test::kAutumn;
using test::kSeason;
using test::kSpring;
using test::session;
using test::wanted;

// A Tuesday and a Thursday of two squads, in both halves.
const std::vector<ledger::SessionKey> kEvenings = {{"u11", "2026-09-01", "18:00"}, {"u11", "2026-09-03", "18:00"},
                                                   {"u13", "2026-09-01", "18:00"}, {"u13", "2027-02-02", "18:00"},
                                                   {"u13", "2027-02-04", "18:00"}, {"u13", "2027-07-06", "18:00"}};

ledger::State some_told() {
  ledger::State state;
  state.sessions[{"u11", "2026-09-01", "18:10"}] = session("held", "most");
  state.sessions[{"u13", "2027-02-02", "18:00"}].started = true;
  state.sessions[{"u16", "2026-09-03", "18:00"}] = session("held", "most");
  return state;
}

TEST(Planned, CountsThoseOfThePeriodAndTheUntold) {
  const PlannedBySquad planned = planned_of(some_told(), kEvenings, kSeason, {});
  EXPECT_EQ(planned, (PlannedBySquad{{"u11", {2, 1}}, {"u13", {3, 2}}}));
  EXPECT_EQ(of_all(planned), (Planned{5, 3}));
  EXPECT_EQ(planned_of(some_told(), kEvenings, kSeason, {kAutumn}), (PlannedBySquad{{"u13", {2, 1}}}));
}

TEST(Planned, ASessionWithNothingInItIsNotTold) {
  ledger::State state;
  state.sessions[{"u11", "2026-09-01", "18:00"}];
  EXPECT_EQ(planned_of(state, {kEvenings.front()}, kSeason, {}), (PlannedBySquad{{"u11", {1, 1}}}));
}

TEST(Planned, OfTwoEveningsOfADayOneMayBeUntold) {
  ledger::State state;
  state.sessions[{"u11", "2026-09-01", "09:00"}] = session("held", "most");
  const std::vector<ledger::SessionKey> both = {{"u11", "2026-09-01", "09:00"}, {"u11", "2026-09-01", "18:00"}};
  EXPECT_EQ(planned_of(state, both, kSeason, {}), (PlannedBySquad{{"u11", {2, 1}}}));
  state.sessions[{"u11", "2026-09-01", "18:00"}] = session("missed", "");
  state.sessions[{"u11", "2026-09-01", "20:00"}] = session("held", "most");
  EXPECT_EQ(planned_of(state, both, kSeason, {}), (PlannedBySquad{{"u11", {2, 0}}}));
}

Release made(const ledger::State& state, Wanted asked, const std::vector<Release>& earlier) {
  return make_release(state, asked, earlier).value().release;
}

// What came in about the half later is not found by subtracting.
TEST(Planned, ASeasonHasItsHalfAsItWasGivenOut) {
  ledger::State state = some_told();
  Wanted half = wanted(kAutumn);
  half.planned = kEvenings;
  const Release autumn = made(state, half, {});
  EXPECT_EQ(autumn.planned, (PlannedBySquad{{"u11", {2, 1}}, {"u13", {1, 1}}}));
  state.sessions[{"u13", "2026-09-01", "18:00"}] = session("held", "most");
  Wanted whole = wanted(kSeason);
  whole.planned = kEvenings;
  const Release season = made(state, whole, {autumn});
  EXPECT_EQ(season.planned, (PlannedBySquad{{"u11", {2, 1}}, {"u13", {3, 2}}}));
  EXPECT_EQ(season.planned_own, (PlannedBySquad{{"u13", {2, 1}}}));
}

TEST(Planned, AHalfThatWasGivenOutWithoutLeavesTheSeasonWithout) {
  Wanted whole = wanted(kSeason);
  whole.planned = kEvenings;
  const Release season = made(some_told(), whole, {made(some_told(), wanted(kAutumn), {})});
  EXPECT_FALSE(season.planned);
  EXPECT_TRUE(season.planned_own);
  EXPECT_EQ(shown_node(season).find("sessions")->find("all")->find("planned"), nullptr);
}

TEST(Planned, StandsOnThePageOfTheClubAndOfEachSquad) {
  Wanted asked = wanted(kSpring);
  asked.planned = kEvenings;
  const Node sessions = *shown_node(made(some_told(), asked, {})).find("sessions");
  EXPECT_EQ(sessions.find("all")->find("planned")->integer, 2);
  EXPECT_EQ(sessions.find("all")->find("untold")->integer, 1);
  EXPECT_EQ(sessions.find("squads")->items[0].find("planned")->integer, 0) << "a squad without evenings";
  EXPECT_EQ(sessions.find("squads")->items[1].find("untold")->integer, 1);
}

}  // namespace
}  // namespace lanework::release
