// Loads, ceilings and the four levels of the objective, from docs/model/session.md alone.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "core/check/check_session.h"
#include "core/check/matter.h"
#include "core/check/selection.h"

namespace lanework::check {

// Thousandths of landings and eccentric repetitions, millimetres, drills.
struct LoadSums {
  std::int64_t contacts = 0;
  std::int64_t eccentric = 0;
  std::int64_t hard_running = 0;
  std::int64_t new_drills = 0;
};
LoadSums loads_of(const Pick& pick, const Matter& matter);
LoadSums loads_of(const Selection& selection, const Matter& matter);
LoadSums ceilings_of(const Matter& matter);
// The row of the age band of the youngest present.
const Band& band_of(const Matter& matter);

// Work of a player in a dose, and the quarters of a full session's dose of its family that it is.
std::int64_t work_ms(const Drill& drill, const Step& step);
std::int64_t credits_of(const Drill& drill, const Step& step, const Matter& matter);

Levels levels_of(const Selection& selection, const Matter& matter);
std::vector<Departure> departures_of(const Selection& selection, const Matter& matter);
// Keys of the required families that no drill of the session touches, in the order of families.toml.
std::vector<std::string> uncovered_of(const Selection& selection, const Matter& matter);

}  // namespace lanework::check
