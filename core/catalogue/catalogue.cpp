#include "core/catalogue/catalogue.h"

#include <algorithm>

namespace lanework::catalogue {
namespace {

constexpr int kYoungest = 8;
constexpr int kOldest = 19;

template <class Row>
const Row* with_key(const std::vector<Row>& rows, const std::string& key) {
  const auto found = std::find_if(rows.begin(), rows.end(), [&](const Row& row) { return row.key == key; });
  return found != rows.end() ? &*found : nullptr;
}

}  // namespace

const Drill* Catalogue::find(const std::string& id) const {
  const auto at =
      std::lower_bound(drills.begin(), drills.end(), id, [](const Drill& d, const std::string& i) { return d.id < i; });
  return at != drills.end() && at->id == id ? &*at : nullptr;
}

const Gait* Catalogue::gait(const std::string& key) const { return with_key(gaits, key); }

const Source* Catalogue::source(const std::string& key) const { return with_key(sources, key); }

const Ceilings& ceilings_at(const Limits& limits, int age) {
  const int clamped = std::clamp(age, kYoungest, kOldest);
  for (const Ceilings& band : limits.ceilings) {
    if (band.age_from <= clamped && clamped <= band.age_to) return band;
  }
  return limits.ceilings.front();  // the bands cover every age: read_limits saw to that
}

MatchDistance match_distance(const Limits& limits, std::optional<int> days_to_match) {
  constexpr int kWhole = 100;
  for (const MatchDistance& row : limits.match) {
    if (days_to_match && row.days == *days_to_match) return row;
  }
  return {days_to_match.value_or(0), kWhole, kWhole, kWhole, true, {}};
}

const Ceilings& Catalogue::ceilings_for(int age) const { return ceilings_at(limits, age); }

MillimetresPerSecond gait_speed(const Gait& gait, int age) {
  return gait.speed[static_cast<std::size_t>(std::clamp(age, kYoungest, kOldest) - kYoungest)];
}

}  // namespace lanework::catalogue
