// On which lanes a house routine can stand as written. Loads of lane drills grow with the lane, and a drill has a
// least lane: outside these lengths the planner changes the routine whatever the time, and the lead should know.
#pragma once

#include <optional>
#include <vector>

#include "core/catalogue/catalogue.h"
#include "core/catalogue/routine.h"
#include "core/plan/problem.h"
#include "core/session/session.h"

namespace lanework::plan {

// What stops the routine on a longer lane.
struct LaneCeiling {
  Load load = Load::kContacts;
  std::int64_t ceiling = 0;  // whole units: landings, repetitions, metres
  // Each alone is a smallest change, by the default weights, that brings the routine under the ceiling a millimetre
  // further on; empty where no single one does. Without a reason.
  std::vector<session::Change> first_changes;
};

struct RoutineLanes {
  int age = 0;                       // the routine's youngest, whose ceilings hold
  Millimetres shortest{};            // the longest of the least lanes of its drills; 0 without lane drills
  int needs_shortest = -1;           // the drill whose least lane that is, index into Catalogue::drills
  Millimetres longest{};             // exact: a millimetre more passes a ceiling
  std::optional<LaneCeiling> above;  // absent where no ceiling is passed up to the longest strip there is, 60 m
};

// Without a match near, which would lower the ceilings, and with nobody held back. From the sum of the routine's loads;
// no plan is solved.
RoutineLanes routine_lanes(const catalogue::Catalogue& catalogue, const catalogue::Routine& routine);

}  // namespace lanework::plan
