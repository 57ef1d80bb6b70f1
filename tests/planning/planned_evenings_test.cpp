// What was planned for an evening is what the last plan before it said.
#include "app/planning/planned_evenings.h"

#include <gtest/gtest.h>

#include "app/read/block_answer.h"
#include "tests/planning/planning_of_demo.h"

namespace lanework::planning {
namespace {

using test::day;

constexpr const char* kSquad = "u13-kestrels";
constexpr const char* kFriday = "2026-11-27T09:00:00+01:00";

std::string plan_on(const std::string& today, const std::vector<test::Said>& said = {}) {
  return plan_squad(test::demo_files(), kSquad, test::known_of(said), day(today), {}, test::little_work()).value().text;
}

std::vector<std::string> drills_of(const std::string& text, const std::string& date) {
  const auto answer = read::read_block_answer("plan", text).value();
  std::vector<std::string> out;
  for (const auto& session : answer.find(kSquad)->sessions) {
    if (to_iso(session.date) != date) continue;
    for (const auto& drill : session.drills) out.push_back(drill.drill);
  }
  return out;
}

TEST(PlannedEvenings, EachIsAsPlannedLastBeforeItBegan) {
  const std::string first = plan_on("2026-11-20");
  const std::string second =
      plan_on("2026-11-25", {{"wrap-up", test::kestrels("2026-11-24", R"("happened":"missed")")}});
  const auto out =
      planned_evenings(kSquad, {{"2026-11-20T20:00:00+01:00", first}, {"2026-11-25T20:00:00+01:00", second}},
                       day("2026-11-01"), kFriday);
  ASSERT_EQ(out.size(), 2U) << "Tuesday and Thursday; what is still to come is no answer to what was";
  EXPECT_EQ(out[0].begins, "2026-11-24 18:00");
  EXPECT_EQ(out[0].planned, "2026-11-20 20:00") << "the second was made afterwards";
  EXPECT_EQ(out[0].drills, drills_of(first, "2026-11-24"));
  EXPECT_EQ(out[0].minutes, 20);
  EXPECT_EQ(out[1].begins, "2026-11-26 18:00");
  EXPECT_EQ(out[1].planned, "2026-11-25 20:00");
  EXPECT_EQ(out[1].drills, drills_of(second, "2026-11-26"));
  EXPECT_FALSE(out[1].drills.empty());
}

TEST(PlannedEvenings, APlanOfTheSameEveningCountsUntilItBegins) {
  const std::string plan = plan_on("2026-11-20");
  const auto made_at = [&](const std::string& made) {
    return planned_evenings(kSquad, {{made, plan}}, day("2026-11-26"), kFriday).size();
  };
  EXPECT_EQ(made_at("2026-11-26T18:00:59+01:00"), 1U);
  EXPECT_EQ(made_at("2026-11-26T18:01:00+01:00"), 0U);
}

TEST(PlannedEvenings, WhatIsNoPlanOfTheSquadIsPassedOver) {
  EXPECT_TRUE(planned_evenings(kSquad, {{"2026-11-20T20:00:00+01:00", "{}"}, {"2026-11-20T20:00:00+01:00", ""}},
                               day("2026-11-01"), kFriday)
                  .empty());
  EXPECT_TRUE(planned_evenings("u16-merlins", {{"2026-11-20T20:00:00+01:00", plan_on("2026-11-20")}}, day("2026-11-01"),
                               kFriday)
                  .empty());
}

}  // namespace
}  // namespace lanework::planning
