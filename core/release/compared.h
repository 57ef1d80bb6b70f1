// The club's rate beside that of an earlier release: from nothing but the numbers that both have given out, so it says
// nothing that the two pages do not. Never of one squad, setting or region.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/release/period.h"

namespace lanework::release {

struct Release;

struct Compared {
  std::int64_t release = 0;  // the earlier one's number
  Period period;             // of it
  double ratio = 0;          // this rate by the earlier, and its exact 95 % limits; in hundredths
  double low = 0;
  double high = 0;
  bool operator==(const Compared&) const = default;
};

// With the release of other days that began nearest to a year before, of those that give a rate; empty where there is
// none, or this one gives none.
std::optional<Compared> compared(const Release& release, const std::vector<Release>& earlier);

}  // namespace lanework::release
