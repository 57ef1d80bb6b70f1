// Every sequence of events through a return course, over time in steps, until nothing new is reached: is there a way to
// contact or to full participation without the gate's clearance, faster than promised, past symptoms, or a state that
// nothing leads out of? The promises are kept by a book of the explorer's own, never by the machine's fields.
// docs/care/return.md says what is explored and why that covers everything.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/care/return_to_sport/course.h"

namespace lanework::care {

// What must hold on every path. Besides these: nothing moves forward but by an entry of the lead or a clinician, step
// by step; no gate opens but by a named clinician; symptoms set back or hold; contact, and any risk of impact, come
// only after a clearance given at a step with movement, since the last symptoms.
struct Promises {
  int least_hours = 0;       // at each step before the next
  int least_exposures = 0;   // at each step but the first, before the next
  int least_hours_away = 0;  // from the opening to anything beside the squad
  struct Behind {
    std::string step;  // this one and every later one
    std::string gate;
  };
  std::vector<Behind> behind;
};

// Of the shipped courses by their published sources; of any other what own judgement asks of all.
Promises promises_of(const std::string& course);

struct BrokenPromise {
  std::string promise;
  std::vector<std::string> path;  // of events, the shortest in time
};

struct Exploration {
  std::int64_t states = 0;
  std::int64_t transitions = 0;  // taken
  std::int64_t refused = 0;
  std::int64_t dead_ends = 0;  // states from which the last step cannot be reached
  int tick_minutes = 0;
  std::optional<int> earliest_last_step_hours;  // after the opening
  std::vector<BrokenPromise> broken;            // each promise once, with a shortest path to it

  [[nodiscard]] bool sound() const { return broken.empty() && dead_ends == 0; }
};

using TransitionFunction = std::function<Transition(const Course&, const CourseState&, const CourseEvent&, By, Moment)>;

// Into how many ticks the common measure of all time limits is cut: with two, each limit is met exactly and fallen
// short of.
inline constexpr int kUsualParts = 2;

// Deterministic. machine: the one explored; another one only to see that the explorer finds its faults.
Exploration explore(const Course& course, const Promises& promises, const TransitionFunction& machine = transition,
                    int parts = kUsualParts);

}  // namespace lanework::care
