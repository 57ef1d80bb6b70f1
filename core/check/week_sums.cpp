#include "core/check/week_sums.h"

#include <algorithm>

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
    add(evening.loads, evening.match_day() || evening.over ? week.fixed : week.planned);
    (evening.over ? week.fresh_before : week.fresh) += evening.fresh;
    week.has_session = week.has_session || (!evening.match_day() && !evening.over);
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

std::vector<std::int64_t> week_targets(const Family& family, const SquadLedger& ledger, int weeks) {
  struct Account {
    std::int64_t promised = 0;
    std::int64_t given = 0;
    int over = 0;
    int to_come = 0;
    bool session = false;
  };
  std::vector<Account> accounts(static_cast<std::size_t>(weeks));
  const auto of = [&](const std::map<std::string, std::int64_t>& sums) {
    const auto found = sums.find(family.key);
    return found == sums.end() ? 0 : found->second;
  };
  for (const EveningLedger& evening : ledger.evenings) {
    Account& week = accounts[static_cast<std::size_t>(evening.wish->week)];
    ++(evening.over ? week.over : week.to_come);
    week.session = week.session || !evening.match_day();
    week.promised += of(evening.promised);
    week.given += of(evening.credits);
  }
  const std::int64_t base = 4 * family.week_seconds / family.session_seconds;
  std::vector<std::int64_t> out(accounts.size(), base);
  for (std::size_t w = 0; w < accounts.size(); ++w) {
    if (accounts[w].over == 0 || accounts[w].to_come > 0) continue;
    std::int64_t owed = std::min(out[w], accounts[w].promised) - accounts[w].given;
    if (owed <= 0) continue;
    // Half of it, rounded up, and then the rest.
    int payers = 2;
    for (std::size_t later = w + 1; later < accounts.size() && payers > 0; ++later) {
      if (!accounts[later].session) continue;
      const std::int64_t part = payers == 2 ? owed - owed / 2 : owed;
      out[later] = std::min(out[later] + part, base + base / 2);
      owed -= part;
      --payers;
    }
  }
  return out;
}

}  // namespace lanework::check
