#include "core/plan/landings_tonight.h"

#include <algorithm>

namespace lanework::plan {

std::int64_t most_landings_tonight(const catalogue::Catalogue& catalogue, const session::Evening& evening,
                                   const session::Weekly& weekly) {
  constexpr std::int64_t kWhole = 100;
  constexpr std::int64_t kThousandths = 1000;
  constexpr std::int64_t kFewestSlots = 2;  // what the bands' ceilings of a week are written for
  const catalogue::Ceilings& band = catalogue.ceilings_for(evening.age);
  const auto percent = [&](std::optional<int> days) {
    return std::int64_t{catalogue::match_distance(catalogue.limits, days).contacts_percent};
  };
  const std::int64_t sessions_percent =
      kWhole * std::max(kFewestSlots, static_cast<std::int64_t>(weekly.slots.size())) +
      (weekly.matches.empty() ? 0 : percent(0));
  const std::int64_t of_session = band.contacts_session * kThousandths / kWhole * percent(evening.days_to_match);
  const std::int64_t share_percent = evening.days_to_match == 0 ? percent(0) : kWhole;
  const std::int64_t of_week = band.contacts_week * kThousandths * share_percent / sessions_percent;
  return std::min(of_session, of_week);
}

}  // namespace lanework::plan
