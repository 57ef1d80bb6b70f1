// The real planner, through the door, on many evenings: every plan of it must pass.
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <map>

#include "tests/check/evenings.h"
#include "tests/check/requests.h"

namespace lanework::check {
namespace {

using namespace test;

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
    ++seen[outcome->text];
    if (report.levels.changes > 0) ++seen["changed"];
    if (report.levels.preference > 0) ++seen["new drills"];
    if (report.levels.uncovered > 0) ++seen["uncovered"];
  });
  EXPECT_TRUE(passed);
  // Few cases of a kind would prove little.
  EXPECT_GE(seen["optimal"], 40);
  EXPECT_GE(seen["infeasible"], 1);
  EXPECT_GE(seen["changed"], 30);
  EXPECT_GE(seen["new drills"], 4);
  EXPECT_GE(seen["uncovered"], 2);
  for (const auto& [what, count] : seen) RecordProperty(what, count);
}

}  // namespace
}  // namespace lanework::check
