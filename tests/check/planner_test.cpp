// The real planner, through the door, on many evenings: every plan of it must pass.
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <map>

#include "tests/check/evenings.h"
#include "tests/check/requests.h"

namespace lanework::check {
namespace {

using namespace test;

// Whatever number of the answer's own arithmetic is moved by one, it is found.
void expect_moved_numbers_found(const Node& request, const Node& answer) {
  static const std::vector<std::string> kPaths = {
      "planned_seconds",        "slot_seconds",           "turnout",
      "gathering_seconds",      "objective.uncovered",    "objective.shortfall",
      "objective.changes",      "objective.preference",   "loads.0.planned",
      "loads.1.planned",        "loads.2.planned",        "loads.3.planned",
      "loads.0.ceiling",        "loads.2.ceiling",        "items.0.takes_seconds",
      "items.0.change_seconds", "items.0.starts_seconds", "time.moving_permille"};
  Node moved = answer;
  const std::string& path = kPaths.at(*rc::gen::inRange<std::size_t>(0, kPaths.size()));
  at(moved, path).integer += *rc::gen::element(-1, 1);
  RC_LOG() << path << " moved\n";
  RC_ASSERT(!report_of(request, moved).ok());
}

TEST(Planner, EveryShippedRoutineAsItIs) {
  for (const char* squad : {"u10-wrens.toml", "u13-kestrels.toml", "u16-merlins.toml"}) {
    const Node request = demo_request(squad);
    const Node answer = planned(request);
    const Report report = report_of(request, answer);
    EXPECT_TRUE(report.ok()) << squad << "\n" << lines(report);
    EXPECT_FALSE(report.infeasible);
  }
}

TEST(Planner, VariedEvenings) {
  std::map<std::string, int> seen;
  const bool passed = rc::check("every plan passes", [&seen] {
    const Evening evening = *evenings();
    const Node request = request_of(evening);
    const Node answer = planned(request);
    RC_LOG() << evening.story;
    const Node* outcome = answer.find("outcome");
    if (outcome == nullptr) {
      RC_LOG() << to_json(answer);
      RC_FAIL("faults");
    }
    const Report report = report_of(request, answer);
    RC_LOG() << lines(report);
    RC_ASSERT(report.ok());
    if (!report.infeasible) expect_moved_numbers_found(request, answer);
    ++seen[outcome->text];
    if (report.levels.changes > 0) ++seen["changed"];
    if (report.levels.preference > 0) ++seen["new drills"];
    if (report.levels.uncovered > 0) ++seen["uncovered"];
  });
  EXPECT_TRUE(passed);
  // Few cases of a kind would prove little.
  EXPECT_GE(seen["optimal"], 60);
  EXPECT_GE(seen["infeasible"], 5);
  EXPECT_GE(seen["changed"], 60);
  EXPECT_GE(seen["new drills"], 15);
  EXPECT_GE(seen["uncovered"], 15);
  for (const auto& [what, count] : seen) RecordProperty(what, count);
}

}  // namespace
}  // namespace lanework::check
