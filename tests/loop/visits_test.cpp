#include "core/loop/visits.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

namespace lanework::loop {
namespace {

const Date kToday = *parse_iso_date("2026-11-27");

ledger::SessionState wrapped_up(const std::string& happened, const std::string& did_it) {
  ledger::SessionState out;
  Node entry = Node::make_table();
  entry.set("happened", Node::make_text(happened));
  entry.set("did_it", Node::make_text(did_it));
  out.wrap_up = entry;
  return out;
}

ledger::SessionKey evening(const std::string& squad, const std::string& day) { return {squad, day, "18:00"}; }

PlannedEvening planned(const std::string& squad, const std::string& day) {
  return {squad, *parse_iso_date(day), *parse_time_of_day("18:00")};
}

TEST(Visits, WhatWasNotRunWeighsMoreThanSilenceAndSilenceMoreThanOneShortEvening) {
  ledger::State state;
  state.sessions[evening("a", "2026-11-24")] = wrapped_up("missed", "");
  state.sessions[evening("b", "2026-11-24")] = wrapped_up("cut-short", "most");
  state.sessions[evening("d", "2026-11-24")] = wrapped_up("held", "most");
  const auto visits = squads_to_visit(
      state, {planned("a", "2026-11-24"), planned("c", "2026-11-24"), planned("d", "2026-11-24")}, kToday);
  ASSERT_EQ(visits.size(), 3U);
  EXPECT_EQ(visits[0].squad, "a");
  EXPECT_EQ(visits[0].causes[0].reason, VisitReason::kNotRun);
  EXPECT_EQ(visits[0].causes[1].reason, VisitReason::kNotSeen);
  EXPECT_EQ(visits[1].squad, "c");
  EXPECT_EQ(visits[1].causes[0].reason, VisitReason::kNothingHeard);
  EXPECT_EQ(visits[2].squad, "b");
}

TEST(Visits, HeldWithNobodyDoingItIsNotRun) {
  ledger::State state;
  state.sessions[evening("a", "2026-11-24")] = wrapped_up("held", "nobody");
  EXPECT_EQ(squads_to_visit(state, {}, kToday).at(0).causes[0].reason, VisitReason::kNotRun);
}

TEST(Visits, AnEveningOfTodayIsNotYetSilent) {
  EXPECT_TRUE(squads_to_visit({}, {planned("a", "2026-11-27")}, kToday).empty());
  EXPECT_EQ(squads_to_visit({}, {planned("a", "2026-11-26")}, kToday).size(), 1U);
  EXPECT_TRUE(squads_to_visit({}, {planned("a", "2026-10-29")}, kToday).empty()) << "longer ago than it looks back";
}

TEST(Visits, WhatLiesBeforeTheVisitCountsNoMore) {
  ledger::State state;
  state.sessions[evening("a", "2026-11-17")] = wrapped_up("held", "few");
  state.sessions[evening("a", "2026-11-19")].visits.push_back(Node::make_table());
  EXPECT_TRUE(squads_to_visit(state, {}, kToday).empty());
  state.sessions[evening("a", "2026-11-24")] = wrapped_up("held", "few");
  const auto visits = squads_to_visit(state, {}, kToday);
  ASSERT_EQ(visits.size(), 1U);
  EXPECT_EQ(visits[0].causes.size(), 1U) << "it was seen within the four weeks";
}

// Whatever happened: never more than three, never one without a cause of its own, weights in order; and one more
// evening that was not run never takes a squad that was told of off the list's order below where it stood.
TEST(Visits, AreFewAndEachHasItsCause) {
  EXPECT_TRUE(rc::check([] {
    ledger::State state;
    std::vector<PlannedEvening> plans;
    const int evenings = *rc::gen::inRange(0, 40);
    for (int e = 0; e < evenings; ++e) {
      const std::string squad(1, static_cast<char>('a' + *rc::gen::inRange(0, 6)));
      const std::string day = to_iso(Date{kToday.days_since_epoch - *rc::gen::inRange(0, 35)});
      plans.push_back(planned(squad, day));
      if (*rc::gen::arbitrary<bool>()) continue;
      state.sessions[evening(squad, day)] = wrapped_up(*rc::gen::element<std::string>("held", "cut-short", "missed"),
                                                       *rc::gen::element<std::string>("most", "half", "few", "nobody"));
    }
    const auto visits = squads_to_visit(state, plans, kToday);
    RC_ASSERT(visits.size() <= kMostVisits);
    for (std::size_t v = 0; v < visits.size(); ++v) {
      RC_ASSERT(visits[v].causes.front().reason != VisitReason::kNotSeen || visits[v].causes.size() > 1);
      if (v > 0) RC_ASSERT(visits[v - 1].weight >= visits[v].weight);
    }
    if (visits.empty()) return;
    const std::string first = visits[0].squad;
    ledger::State worse = state;
    worse.sessions[{first, to_iso(kToday), "07:00"}] = wrapped_up("missed", "");
    RC_ASSERT(squads_to_visit(worse, plans, kToday)[0].squad == first);
  }));
}

}  // namespace
}  // namespace lanework::loop
