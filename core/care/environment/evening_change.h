// What the weather's verdict makes of one evening: a later start, fewer minutes, breaks, less effort, or no session,
// each with the words that stand on plan and card.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/units.h"
#include "core/care/environment/weather_verdict.h"
#include "core/people/player.h"

namespace lanework::care::environment {

struct EveningChange {
  std::string no_session;                          // why there is none tonight; empty: there may be one
  Moment start;                                    // perhaps later than asked
  Seconds length;                                  // perhaps shorter, never below the shortest slot
  int breaks = 0;                                  // 0 to kMostBreaks
  Seconds break_each{};                            // up to kLongestBreakSeconds; 0 where there are none
  std::string break_why;                           // in the coach's words
  std::vector<std::string> remarks;                // what is different tonight and why; empty: nothing
  std::optional<people::Restriction> whole_squad;  // less effort, without the squad's name
};

// What a slot takes (docs/formats/squad.md).
inline constexpr int kMostBreaks = 6;
inline constexpr std::int64_t kLongestBreakSeconds = 1200;
inline constexpr std::int64_t kShortestSlotSeconds = 300;

// The slot as it was to be; the verdict is of a moment in it or before.
EveningChange evening_change(const WeatherVerdict& verdict, Moment start, Seconds length);

}  // namespace lanework::care::environment
