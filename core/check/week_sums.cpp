#include "core/check/week_sums.h"

namespace lanework::check {
namespace {

void add(const LoadSums& more, LoadSums& sum) {
  sum.contacts += more.contacts;
  sum.eccentric += more.eccentric;
  sum.hard_running += more.hard_running;
}

}  // namespace

std::vector<WeekSums> week_sums(const SquadLedger& ledger, int weeks) {
  std::vector<WeekSums> out(static_cast<std::size_t>(weeks));
  for (const EveningLedger& evening : ledger.evenings) {
    WeekSums& week = out[static_cast<std::size_t>(evening.wish->week)];
    add(evening.loads, evening.match_day() ? week.match_days : week.planned);
    week.fresh += evening.fresh;
    week.has_session = week.has_session || !evening.match_day();
    for (const auto& [family, credits] : evening.credits) week.credits[family] += credits;
    for (const auto& [family, ms] : evening.work_ms) week.work_ms[family] += ms;
  }
  return out;
}

LoadSums week_ceilings(const Matter& matter, const SquadLedger& ledger) {
  const EveningLedger* youngest = nullptr;
  for (const EveningLedger& evening : ledger.evenings) {
    if (youngest == nullptr || evening.age < youngest->age) youngest = &evening;
  }
  if (youngest == nullptr) return {};
  const Band& band = youngest->band;
  const std::int64_t contacts = band.jump_cap_week * matter.limits.warm_up_share_percent / 100;
  return {1000 * contacts, 1000 * band.eccentric_week, 1000 * band.hard_running_week_metres, 0};
}

std::int64_t week_target(const Family& family) { return 4 * family.week_seconds / family.session_seconds; }

}  // namespace lanework::check
