// What a release is of: a season or a half of one, over and done. Each day is given out once on its own, and at most
// once more within the season that holds its half; never in other pieces.
#pragma once

#include <optional>
#include <vector>

#include "core/base/date.h"
#include "core/base/result.h"

namespace lanework::release {

struct Period {
  Date from;
  Date until;  // with it
  auto operator<=>(const Period&) const = default;
};

inline constexpr int kLeastDays = 90;  // own judgement: no weekly or monthly pieces
inline constexpr int kMostDays = 400;  // own judgement: a season

int days_of(const Period& period);
bool holds(const Period& period, Date day);
bool lies_within(const Period& inner, const Period& outer);

// Of those earlier, the ones that lie within this.
std::vector<Period> pieces_of(const Period& period, const std::vector<Period>& earlier);

// Days of the period that no earlier release had.
int new_days(const Period& period, const std::vector<Period>& earlier);

struct PeriodRefused {
  const char* key = "";  // part of the JSON contract
  Fault fault;
};

// Why this may not be given out, beside what was; empty where it may. A period that was given out already is frozen:
// nothing of it is counted again, corrections go with the next release as a remark.
std::optional<PeriodRefused> period_refused(const Period& period, const std::vector<Period>& earlier, Date today);

}  // namespace lanework::release
