// The return courses gone through exhaustively: what the shipped rules promise holds on every path, and the explorer
// finds what is broken on purpose. The figures are printed.
#include "core/care/return_to_sport/explore.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <iostream>

#include "tests/care/shipped_rules.h"

namespace lanework::care {
namespace {

Course in_force(const char* course, const char* rule_set, std::optional<int> age) {
  return course_in_force(test::return_rules(), course, rule_set, age).course;
}

Exploration told(const char* what, const Course& course) {
  Exploration found = explore(course, promises_of(course.id));
  std::cout << what << ": " << found.states << " states, " << found.transitions << " transitions taken, "
            << found.refused << " refused, " << found.dead_ends << " dead ends, last step after "
            << found.earliest_last_step_hours.value_or(-1) << " h at the earliest\n";
  for (const BrokenPromise& broken : found.broken) {
    std::cout << "  broken: " << broken.promise << "\n";
    for (const std::string& event : broken.path) std::cout << "    " << event << "\n";
  }
  return found;
}

TEST(Explore, ConcussionKeepsEveryPromise) {
  const Exploration found = told("concussion, adult, consensus", in_force("concussion", "consensus", 25));
  EXPECT_TRUE(found.sound());
  // Six steps of 24 h: the sixth not before 120 h after the first began.
  EXPECT_EQ(found.earliest_last_step_hours, 120);
}

TEST(Explore, ConcussionOfAChildWithStricterRules) {
  const Exploration found = told("concussion, 14 years, 14 days", in_force("concussion", "symptom-free-14-days", 14));
  EXPECT_TRUE(found.sound());
  // 14 days without symptoms before clearance to contact, then a day of full practice.
  EXPECT_EQ(found.earliest_last_step_hours, 14 * 24 + 24);
}

TEST(Explore, WhatIsNotKnownIsNoFasterThanTheStrictest) {
  const Exploration found = told("concussion, age and rules not known", in_force("concussion", "", {}));
  EXPECT_TRUE(found.sound());
  EXPECT_EQ(found.earliest_last_step_hours, 14 * 24 + 24);
}

TEST(Explore, GeneralKeepsEveryPromise) {
  const Exploration found = told("general", in_force("general", "consensus", 14));
  EXPECT_TRUE(found.sound());
  EXPECT_EQ(found.earliest_last_step_hours, 120);
}

TEST(Explore, FinerTimeFindsNoOtherWay) {
  const Course course = in_force("concussion", "consensus", 25);
  constexpr int kHourly = 24;
  const Exploration coarse = explore(course, promises_of(course.id));
  const Exploration fine = explore(course, promises_of(course.id), transition, kHourly);
  std::cout << "concussion, adult, hour by hour: " << fine.states << " states, " << fine.transitions
            << " transitions\n";
  EXPECT_EQ(fine.tick_minutes, 60);
  EXPECT_TRUE(fine.sound());
  EXPECT_GT(fine.states, coarse.states);
  EXPECT_EQ(fine.earliest_last_step_hours, coarse.earliest_last_step_hours);
}

// ---- what is broken on purpose is found ----------------------------------------------------------------------------

bool breaks(const Exploration& found, const std::string& words) {
  return std::any_of(found.broken.begin(), found.broken.end(), [&](const BrokenPromise& broken) {
    return broken.promise.find(words) != std::string::npos && !broken.path.empty();
  });
}

Exploration with(void (*break_it)(Course&), const char* course = "concussion") {
  Course broken = in_force(course, "consensus", 25);
  break_it(broken);
  return explore(broken, promises_of(broken.id));
}

TEST(Explore, FindsAGateRemoved) {
  const Exploration contact = with([](Course& c) { c.steps[4].gate.reset(); });
  EXPECT_TRUE(breaks(contact, "after its gate's clearance"));
  const Exploration risk = with([](Course& c) { c.steps[3].gate.reset(); });
  EXPECT_TRUE(breaks(risk, "after a clearance since the last symptoms"));
  const Exploration practice = with([](Course& c) { c.steps[3].gate.reset(); }, "general");
  EXPECT_TRUE(breaks(practice, "after a clearance since the last symptoms"));
  // A way there is told, from the opening on.
  ASSERT_FALSE(practice.broken.empty());
  EXPECT_EQ(practice.broken.front().path.front().substr(0, 6), "begin ");
}

TEST(Explore, FindsAStepThatIsTooShort) {
  EXPECT_TRUE(breaks(with([](Course& c) { c.steps[2].least_hours = 12; }), "before its least time"));
  EXPECT_TRUE(breaks(with([](Course& c) { c.steps[0].least_hours = 0; }), "before its least time"));
  EXPECT_TRUE(breaks(with([](Course& c) { c.steps[4].least_exposures = 0; }, "general"), "before a session"));
}

TEST(Explore, FindsSymptomsThatDoNotSetBackFarEnough) {
  EXPECT_TRUE(breaks(with([](Course& c) { c.steps[4].back_to = 3; }), "set back to one without"));
  EXPECT_TRUE(breaks(with([](Course& c) { c.steps[4].symptom_free = false; }), "any symptoms"));
}

// The first draft of the shipped general course set back from full to limited practice, behind a gate that stayed open.
TEST(Explore, FindsAGateThatStaysOpenPastSymptoms) {
  const Exploration found = with([](Course& c) { c.steps[4].back_to = 3; }, "general");
  EXPECT_TRUE(breaks(found, "after a clearance since the last symptoms"));
}

TEST(Explore, FindsADeadEnd) {
  const Exploration found = with([](Course& c) { c.steps[0].gate = 0; });
  EXPECT_EQ(found.dead_ends, found.states);
  EXPECT_FALSE(found.earliest_last_step_hours);
}

TEST(Explore, FindsAMachineThatIsBroken) {
  const Course course = in_force("concussion", "consensus", 25);
  const auto found_of = [&](const TransitionFunction& machine) {
    return explore(course, promises_of(course.id), machine);
  };
  EXPECT_TRUE(breaks(found_of([](const Course& c, const CourseState& s, const CourseEvent& e, By, Moment at) {
                       return transition(c, s, e, std::holds_alternative<Clearance>(e) ? By::kClinician : By::kLead,
                                         at);
                     }),
                     "begun by the lead or a clinician"));
  EXPECT_TRUE(breaks(found_of([](const Course& c, const CourseState& s, const CourseEvent& e, By by, Moment at) {
                       CourseEvent named = e;
                       if (auto* clearance = std::get_if<Clearance>(&named)) clearance->clinician = "anybody";
                       return transition(c, s, named, by, at);
                     }),
                     "named clinician"));
  EXPECT_TRUE(breaks(found_of([](const Course& c, const CourseState& s, const CourseEvent& e, By by, Moment at) {
                       Transition next = transition(c, s, e, by, at);
                       auto* state = std::get_if<CourseState>(&next);
                       if (state != nullptr && std::holds_alternative<Check>(e)) state->begun = true;
                       return next;
                     }),
                     "moves forward"));
  // Gates that stay open past symptoms.
  EXPECT_TRUE(breaks(found_of([](const Course& c, const CourseState& s, const CourseEvent& e, By by, Moment at) {
                       Transition next = transition(c, s, e, by, at);
                       auto* state = std::get_if<CourseState>(&next);
                       if (state != nullptr) state->open_gates |= s.open_gates;
                       return next;
                     }),
                     "after its gate's clearance"));
}

}  // namespace
}  // namespace lanework::care
