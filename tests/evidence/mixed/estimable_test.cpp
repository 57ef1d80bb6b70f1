// What cannot be estimated is said before the fit; what can be is let through.
#include "core/evidence/mixed/estimable.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "core/evidence/mixed/poisson_fit.h"

namespace lanework::evidence {
namespace {

Frame frame(std::vector<std::string> names, const std::vector<std::vector<double>>& rows, std::vector<double> events) {
  Frame out;
  out.names = std::move(names);
  for (const std::vector<double>& row : rows) out.design.insert(out.design.end(), row.begin(), row.end());
  out.log_hours.assign(rows.size(), 0);
  out.events = std::move(events);
  out.squad_ends = {rows.size() / 2, rows.size()};
  return out;
}

std::string why(const Frame& rows, bool squads_differ = true) {
  const auto found = why_not_estimable(rows, squads_differ);
  return found ? in_words(*found) : "";
}

TEST(Estimable, NoEvent) {
  EXPECT_EQ(why(frame({"intercept"}, {{1}, {1}, {1}}, {0, 0, 0})).substr(0, 31), "no event at all was counted; 'l");
}

TEST(Estimable, OneSquadOnly) {
  Frame rows = frame({"intercept"}, {{1}, {1}, {1}}, {0, 1, 0});
  rows.squad_ends = {3};
  EXPECT_NE(why(rows).find("one squad only"), std::string::npos);
  EXPECT_EQ(why(rows, false), "");
}

TEST(Estimable, AColumnThatNeverChanges) {
  EXPECT_EQ(why(frame({"intercept", "grass"}, {{1, 2}, {1, 2}, {1, 2}, {1, 2}}, {0, 1, 0, 1})),
            "'grass' is the same in every row; leave it out");
  EXPECT_EQ(why(frame({"intercept", "grass"}, {{1, 0}, {1, 0}, {1, 0}, {1, 0}}, {0, 1, 0, 1})),
            "'grass' is 0 in every row; leave it out");
}

TEST(Estimable, AColumnThatIsASumOfOthers) {
  const Frame rows =
      frame({"intercept", "girls", "boys"}, {{1, 1, 0}, {1, 0, 1}, {1, 1, 0}, {1, 0, 1}, {1, 1, 0}}, {0, 1, 2, 1, 1});
  EXPECT_EQ(why(rows),
            "'boys' says nothing that 'intercept' and 'girls' do not say already, so that their effects cannot be told "
            "apart; leave one of them out");
}

TEST(Estimable, AColumnOfLargeNumbersIsNoSumOfOthers) {
  const Frame rows = frame({"intercept", "year"}, {{1, 2024}, {1, 2025}, {1, 2026}, {1, 2027}}, {0, 1, 2, 1});
  EXPECT_EQ(why(rows), "");
}

TEST(Estimable, EventsOnOneSideOnly) {
  const Frame rows = frame({"intercept", "age: U9", "x"},
                           {{1, 1, 3}, {1, 0, 1}, {1, 1, 2}, {1, 0, 2}, {1, 0, 4}, {1, 1, 1}}, {0, 1, 0, 2, 1, 0});
  EXPECT_EQ(
      why(rows),
      "every event lies on one side of 'age: U9', so that its effect has no finite best value; join categories, or "
      "leave it out");
}

// Events in both categories, but only where x is 0, and no row beyond: nothing runs off.
TEST(Estimable, FlatWithEventsIsNotYetSeparated) {
  const Frame rows = frame({"intercept", "x"}, {{1, 0}, {1, 1}, {1, -1}, {1, 0}, {1, 2}}, {1, 0, 0, 2, 0});
  EXPECT_EQ(why(rows), "");
}

// Three groups, the first without events, where x makes the way to the answer long: what a search by small steps gave
// up.
TEST(Estimable, AnEmptyGroupBesideAColumnThatHidesIt) {
  const std::vector<int> x = {-5, -5, -5, -5, -5, -2, -5, -5, -2, -5, -5, -4, -5, -5, -2, -5, 3, 2, 1, 0, 2, 2, 3, -4};
  std::vector<std::vector<double>> rows;
  std::vector<double> events(x.size(), 0);
  events[10] = events[23] = 3;
  for (std::size_t i = 0; i < x.size(); ++i)
    rows.push_back({1, static_cast<double>(x[i]), i % 3 == 1 ? 1.0 : 0.0, i % 3 == 2 ? 1.0 : 0.0});
  EXPECT_EQ(why(frame({"intercept", "x", "group 1", "group 2"}, rows, events), false),
            "every event lies on one side of 'group 1' and 'group 2', so that their effects have no finite best value; "
            "join categories, or leave one of them out");
}

// Wherever it has nothing to say the fit comes to an end at finite coefficients; wherever a group without events is
// told by a column of its own, it has.
RC_GTEST_PROP(Estimable, SaysSoExactlyWhereCoefficientsRunOff, ()) {
  const std::size_t count = 24;
  const int groups = *rc::gen::inRange(2, 5);
  std::vector<std::string> names = {"intercept", "x"};
  for (int g = 1; g < groups; ++g) names.push_back("group " + std::to_string(g));
  std::vector<std::vector<double>> rows;
  std::vector<double> events;
  std::vector<double> by_group(static_cast<std::size_t>(groups), 0);
  double all = 0;
  for (std::size_t i = 0; i < count; ++i) {
    const auto group = static_cast<std::size_t>(i) % static_cast<std::size_t>(groups);
    std::vector<double> row(names.size(), 0);
    row[0] = 1;
    row[1] = *rc::gen::inRange(-5, 6);
    if (group > 0) row[group + 1] = 1;
    rows.push_back(row);
    events.push_back(*rc::gen::weightedElement<double>({{6, 0.0}, {2, 1.0}, {1, 3.0}}));
    by_group[group] += events.back();
    all += events.back();
  }
  RC_PRE(all > 0);
  Frame made = frame(names, rows, events);
  const std::string said = why(made, false);
  const bool empty_group = std::any_of(by_group.begin(), by_group.end(), [](double sum) { return sum == 0; });
  if (empty_group) RC_ASSERT(!said.empty());
  if (!said.empty()) return;
  const PoissonFit fit = fit_poisson_alone(made);
  RC_ASSERT(fit.judged.converged);
  for (const double coefficient : fit.coefficients) RC_ASSERT(std::abs(coefficient) < 25);
}

}  // namespace
}  // namespace lanework::evidence
