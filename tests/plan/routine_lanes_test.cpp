// On which lanes a routine stands as written: by hand for one, and for all as the planner answers a millimetre
// before and a millimetre beyond.
#include "core/plan/routine_lanes.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <stdexcept>

#include "core/plan/plan_session.h"
#include "core/plan/reason_words.h"
#include "tests/catalogue/shipped.h"
#include "tests/plan/referee_evenings.h"

namespace lanework::plan {
namespace {

const catalogue::Catalogue& shipped() { return catalogue::test::shipped_catalogue(); }

const catalogue::Routine& routine_of(const std::string& id) {
  for (const catalogue::Routine& routine : shipped_routines()) {
    if (routine.id == id) return routine;
  }
  throw std::out_of_range(id);
}

// Two hours, nothing missing, nobody held back, no match in sight.
std::vector<session::Change> planned_changes(const catalogue::Routine& routine, Millimetres lane) {
  session::Evening evening;
  evening.slot = Seconds(7200);
  evening.turnout = 14;
  evening.age = routine.age_from;
  evening.strip.lane_length = lane;
  evening.strip.cone_spacing = Millimetres(5000);
  evening.strip.lanes = 3;
  evening.strip.lane_gap = Millimetres(3000);
  evening.strip.area_width = Millimetres(30'000);
  evening.strip.area_length = Millimetres(30'000);
  evening.strip.wall = evening.strip.soft_ground = evening.strip.line = true;
  evening.kit = {50, 50, 50};
  KernelWorkspace workspace;
  const Plan plan = plan_session(shipped(), routine, evening, workspace);
  EXPECT_EQ(plan.outcome, Outcome::kOptimal) << routine.id;
  return plan.session.changes;
}

bool same(const session::Change& a, const session::Change& b) {
  return a.kind == b.kind && a.drill == b.drill && a.from == b.from && a.to == b.to;
}

// Landings: jump and stick 2 x 6 x 1 = 12, high skip 1 x lane x 0.5, plant and cut 1 x lane x 0.2; the ceiling at 11 is
// 40 % of 60 = 24, so the lane may have 12 / 0.7 = 17.1428... m. Strides need 15 m. Easier by one rung: the high skip
// (half the landings) or jump and stick (0.8 of them).
TEST(RoutineLanes, EarlyTeensByHand) {
  const RoutineLanes lanes = routine_lanes(shipped(), routine_of("early-teens"));
  EXPECT_EQ(lanes.age, 11);
  EXPECT_EQ(lanes.shortest.count, 15'000);
  EXPECT_EQ(shipped().drills[static_cast<std::size_t>(lanes.needs_shortest)].id, "strides");
  EXPECT_EQ(lanes.longest.count, 17'142);
  ASSERT_TRUE(lanes.above.has_value());
  EXPECT_EQ(lanes.above->load, Load::kContacts);
  EXPECT_EQ(lanes.above->ceiling, 24);
  ASSERT_EQ(lanes.above->first_changes.size(), 2U);
  for (std::size_t i = 0; i < 2; ++i) {
    const session::Change& change = lanes.above->first_changes[i];
    EXPECT_EQ(change.kind, session::ChangeKind::kEasierRung);
    EXPECT_EQ(change.to, change.from - 1);
    EXPECT_EQ(shipped().drills[static_cast<std::size_t>(change.drill)].id, i == 0 ? "high-skip" : "jump-and-stick");
  }
}

TEST(RoutineLanes, NoCeilingNoEnd) {
  catalogue::Routine routine = routine_of("early-teens");
  routine.lines.resize(4);  // laps, shuffle, lunge, hip closing: no landings, no fast running
  const RoutineLanes lanes = routine_lanes(shipped(), routine);
  EXPECT_FALSE(lanes.above.has_value());
  EXPECT_EQ(lanes.longest.count, 60'000);
  EXPECT_EQ(lanes.shortest.count, 8000);
}

// A drill that needs more lane than the ceilings leave.
TEST(RoutineLanes, NoLaneAtAll) {
  catalogue::Catalogue catalogue = shipped();
  for (catalogue::Drill& drill : catalogue.drills) {
    if (drill.id == "strides") drill.lane.least_lane = Millimetres(20'000);
  }
  const RoutineLanes lanes = routine_lanes(catalogue, routine_of("early-teens"));
  EXPECT_EQ(lanes.shortest.count, 20'000);
  EXPECT_EQ(lanes.longest.count, 17'142);
  ASSERT_TRUE(lanes.above.has_value());
  EXPECT_TRUE(lanes.above->first_changes.empty());
}

// Every routine at every age it is for: the planner returns it as written up to the length found, and a millimetre
// further on makes one of the changes named.
TEST(RoutineLanes, AreThePlannersOwn) {
  int ended = 0;
  for (catalogue::Routine routine : shipped_routines()) {
    for (; routine.age_from <= routine.age_to; ++routine.age_from) {
      const std::string name = routine.id + " at " + std::to_string(routine.age_from);
      const RoutineLanes lanes = routine_lanes(shipped(), routine);
      EXPECT_TRUE(planned_changes(routine, lanes.longest).empty()) << name;
      EXPECT_TRUE(planned_changes(routine, lanes.shortest).empty()) << name;
      const auto shorter = planned_changes(routine, lanes.shortest - Millimetres(1));
      EXPECT_TRUE(std::any_of(shorter.begin(), shorter.end(), [&](const session::Change& change) {
        return change.drill == lanes.needs_shortest;
      })) << name;
      if (!lanes.above) continue;
      ++ended;
      const auto longer = planned_changes(routine, lanes.longest + Millimetres(1));
      ASSERT_EQ(longer.size(), 1U) << name;
      const std::vector<session::Change>& named = lanes.above->first_changes;
      EXPECT_TRUE(std::any_of(named.begin(), named.end(), [&](const session::Change& change) {
        return same(change, longer.front());
      })) << name;
      const auto* kept = std::get_if<session::KeepsCeiling>(&longer.front().why);
      ASSERT_NE(kept, nullptr) << name << ": " << words(longer.front().why, shipped());
      EXPECT_EQ(kept->age, routine.age_from) << name;
    }
  }
  EXPECT_GT(ended, 10);
}

}  // namespace
}  // namespace lanework::plan
