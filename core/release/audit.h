// What somebody works out who has every release and knows one child's injury besides: the least and the most that each
// number can be which was not given out. docs/model/release.md.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "core/release/release.h"

namespace lanework::release {

struct Interval {
  std::int64_t least = 0;
  std::int64_t most = 0;
  bool operator==(const Interval&) const = default;
};

// Fewer possible numbers than five give it away: so would any that lie within 1 to 4, and 'all' and 'none'.
inline constexpr std::int64_t kLeastWidth = 4;

// Of which days a number is that was not given out.
enum class Days : std::uint8_t {
  kPeriod,  // the release's own
  kRest,    // those of it that no release had before: what subtracting leaves
};

struct NotGiven {
  std::int64_t release = 0;
  Period period;  // of it
  Days days = Days::kPeriod;
  Table table = Table::kSquads;
  std::string key;  // empty: all injuries together
  Count actual;
  Interval interval;       // from the releases alone
  std::int64_t width = 0;  // the narrowest, whichever one child's injury is known besides; at most kLeastWidth
  [[nodiscard]] bool exposed() const { return is_small(actual) && width < kLeastWidth; }
};

// Every small number that was not given out, and every larger one that is hidden. The releases in any order.
std::vector<NotGiven> audit(const std::vector<Release>& releases);

// The same of one release and those within it, for one table; only what is exposed.
std::vector<NotGiven> exposed_in(const Release& release, const std::vector<Release>& earlier, Table table);

// Whether all injuries together give something away: of the period, or of what subtracting leaves.
std::vector<NotGiven> exposed_totals(const Release& release, const std::vector<Release>& earlier);

// 'squads u13, 2026-08-01 to 2027-06-30: 2 to 3'; without the actual number.
std::string in_words(const NotGiven& one);

}  // namespace lanework::release
