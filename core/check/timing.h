// The checker's own clock, written from docs/model/clock.md: lanes are simulated player by player, not
// computed by the closed form that the planner uses.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "core/check/matter.h"
#include "core/check/selection.h"

namespace lanework::check {

struct DrillTiming {
  std::int64_t telling_ms = 0;
  std::int64_t doing_ms = 0;
  std::int64_t hold_up_ms = 0;  // what the slowest player adds
  std::int64_t moving_permille = 0;
  double log_spread = 0;
};
DrillTiming time_drill(const Pick& pick, const Matter& matter);

std::int64_t gathering_ms(const Matter& matter);
std::int64_t change_ms(const std::string& from, const std::string& to, const Matter& matter);

struct ItemTiming {
  std::int64_t rest_seconds = 0;  // breaks before it
  std::int64_t change_seconds = 0;
  std::int64_t takes_seconds = 0;
  std::int64_t starts_seconds = 0;
};

struct SessionTiming {
  std::vector<ItemTiming> items;
  std::int64_t gathering_seconds = 0;
  std::int64_t planned_seconds = 0;
  std::int64_t margin_seconds = 0;  // of this very session
  std::int64_t moving_permille = 0;
};
SessionTiming time_session(const Selection& selection, const Matter& matter);

}  // namespace lanework::check
