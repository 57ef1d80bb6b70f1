// Days lost to an injury, by the rule of the 2020 consensus on recording (Bahr R et al., Br J Sports Med 2020, doi
// 10.1136/bjsports-2019-101969, table 10): neither the day it happened nor the day of return counts, and what counts is
// whether the player could have taken part in full, not whether there was a session.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/base/date.h"

namespace lanework::evidence {

struct Absence {
  // The day of the injury, or where its loss came later the first day that the player could not take part.
  Date begins;
  std::optional<Date> returned;  // able to take part in full again; empty: not yet
  // Of a problem that comes and goes: the days that were lost, and no others. Then the rest does not count.
  std::vector<Date> days_missed;
};

struct DaysLost {
  int days = 0;
  bool open = false;  // so far: no return is known by the day of the report
  bool operator==(const DaysLost&) const = default;
};

// as_of: the day of the report, or the last one that is known of. Returns after it count as not yet.
DaysLost days_lost(const Absence& absence, Date as_of);

// The consensus' bands of time loss; those of open injuries can only rise. 0, 1 to 7, 8 to 28, more days (from memory).
enum class SeverityBand : std::uint8_t { kNone, kToAWeek, kToFourWeeks, kLonger };
SeverityBand severity_band(int days);

}  // namespace lanework::evidence
