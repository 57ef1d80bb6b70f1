#include "core/block/week_families.h"

#include <algorithm>
#include <numeric>

#include "core/block/load_price.h"
#include "core/block/value_rows.h"

namespace lanework::block {
namespace {

// A ceiling is kept in so many parts at the most; pieces are rounded down to them, which can only let in more.
constexpr int kMostParts = 200;
constexpr std::int32_t kReached = kNever / 2;

bool may(const Ways& ways, std::size_t member, std::uint64_t way) { return (ways[member] & way) != 0; }

}  // namespace

WeekFamilies::WeekFamilies(const Problem& problem) : p_(problem) {}

const std::vector<Option>& WeekFamilies::options(const Session& session, std::size_t member) const {
  return p_.kinds[static_cast<std::size_t>(session.kind)].options[static_cast<std::size_t>(members_[member])];
}

void WeekFamilies::begin(std::size_t week, std::span<const Session> sessions, std::span<const int> members) {
  week_ = week;
  members_.assign(members.begin(), members.end());
  worth_.assign(p_.families.size(), {});
  cap_.clear();
  for (std::size_t f = 0; f < p_.families.size(); ++f) {
    const int target = p_.weeks[week].target[f];
    cap_.push_back(static_cast<std::size_t>(std::max(0, target + counted_beyond(target))));
    for (std::size_t c = 0; c <= cap_[f]; ++c) {
      const int credits = p_.weeks[week].fixed[f] + static_cast<int>(c);
      worth_[f].push_back(block::worth(p_.families[f], target, credits) * kFine);
    }
  }
  choose_whole_load(sessions);
  families_.resize(p_.families.size());
  for (FamilyTable& table : families_) {
    table.items.clear();
    table.heavy = false;
  }
  for (std::size_t m = 0; m < members_.size(); ++m) {
    const int group = p_.drills[static_cast<std::size_t>(members_[m])].group;
    FamilyTable& table = families_[static_cast<std::size_t>(p_.groups[static_cast<std::size_t>(group)].family)];
    for (std::size_t s = 0; s < sessions.size(); ++s) {
      const std::vector<Option>& all = options(sessions[s], m);
      if (all.empty()) continue;
      table.items.push_back({s, m, s * members_.size() + m});
      table.heavy = table.heavy ||
                    std::any_of(all.begin(), all.end(), [&](const Option& option) { return parts_of(option) > 0; });
    }
  }
}

// The load of which the set's largest doses would take most of the ceiling over again.
void WeekFamilies::choose_whole_load(std::span<const Session> sessions) {
  whole_ = -1;
  double most = 1;
  int divisor = 0;
  for (std::size_t l = 0; l < kLoads; ++l) {
    const int ceiling = p_.weeks[week_].ceiling[l];
    std::int64_t sum = 0;
    int common = 0;
    for (const Session& session : sessions) {
      for (std::size_t m = 0; m < members_.size(); ++m) {
        int largest = 0;
        for (const Option& option : options(session, m)) {
          largest = std::max(largest, option.loads[l]);
          common = std::gcd(common, option.loads[l]);
        }
        sum += largest;
      }
    }
    const double times = static_cast<double>(sum) / std::max(1, ceiling);
    if (times <= most) continue;
    most = times;
    whole_ = static_cast<int>(l);
    divisor = common;
  }
  if (whole_ < 0) return;
  const int ceiling = std::max(0, p_.weeks[week_].ceiling[static_cast<std::size_t>(whole_)]);
  unit_ = best_unit(sessions, ceiling, std::max(1, divisor));
  parts_ = static_cast<std::size_t>(ceiling / unit_);
}

// The unit in which least is lost by rounding down, of those that make the ceiling few enough parts.
int WeekFamilies::best_unit(std::span<const Session> sessions, int ceiling, int divisor) const {
  const int least = (ceiling + kMostParts - 1) / kMostParts;
  if (least <= divisor) return divisor;
  std::vector<int> loads;
  for (const Session& session : sessions) {
    for (std::size_t m = 0; m < members_.size(); ++m) {
      for (const Option& option : options(session, m)) loads.push_back(option.loads[static_cast<std::size_t>(whole_)]);
    }
  }
  std::sort(loads.begin(), loads.end());
  loads.erase(std::unique(loads.begin(), loads.end()), loads.end());
  const int first = (least + divisor - 1) / divisor * divisor;
  int best = first;
  double least_lost = INT32_MAX;
  for (int unit = first; unit < 2 * first; unit += std::max(divisor, first / 50 / divisor * divisor)) {
    double lost = 0;
    for (const int load : loads) lost += load == 0 ? 0 : static_cast<double>(load % unit) / load;
    if (lost >= least_lost) continue;
    least_lost = lost;
    best = unit;
  }
  return best;
}

std::size_t WeekFamilies::parts_of(const Option& option) const {
  return whole_ < 0 ? 0 : static_cast<std::size_t>(option.loads[static_cast<std::size_t>(whole_)] / unit_);
}

std::int32_t WeekFamilies::earning(const Item& item, std::size_t family, const Option& option,
                                   const WeekPrices& prices) const {
  std::int64_t earns = prices.use[item.place];
  earns -= std::int64_t{prices.credit[item.session * p_.families.size() + family]} * option.credits;
  if (whole_ >= 0) earns += load_cost(prices.load[item.session], option.loads[static_cast<std::size_t>(whole_)]);
  return static_cast<std::int32_t>(earns);
}

std::int64_t WeekFamilies::solve(std::span<const Session> sessions, const std::vector<Ways>& ways,
                                 const WeekPrices& prices, std::vector<int>& choice) {
  choice.assign(sessions.size() * members_.size(), -1);
  std::int64_t sum = 0;
  std::vector<std::size_t> heavy;
  for (std::size_t f = 0; f < families_.size(); ++f) {
    fill(f, sessions, ways, prices);
    if (families_[f].best.back() <= kReached) return SessionLister::kDoesNotFit;
    if (families_[f].heavy) {
      heavy.push_back(f);
      continue;
    }
    sum += families_[f].best.front();
    read(f, 0, sessions, ways, prices, choice);
  }
  if (heavy.empty()) return sum;
  const int count = static_cast<int>(parts_) + 1;
  together_.resize(heavy.size());
  together_[0] = families_[heavy[0]].best;
  for (std::size_t h = 1; h < heavy.size(); ++h) {
    together_[h].assign(parts_ + 1, kNever);
    for (std::size_t k = 0; k <= parts_; ++k) {
      const std::int32_t own = families_[heavy[h]].best[k];
      // The tables rise with the parts: equal to the entry before, it brings nothing.
      if (own <= kReached || (k > 0 && own == families_[heavy[h]].best[k - 1])) continue;
      raise_row(together_[h].data() + k, together_[h - 1].data(), own, count - static_cast<int>(k));
    }
  }
  std::size_t parts = parts_;
  if (together_.back()[parts] <= kReached) return SessionLister::kDoesNotFit;
  sum += together_.back()[parts];
  for (std::size_t h = heavy.size(); h-- > 1;) {
    const std::vector<std::int32_t>& own = families_[heavy[h]].best;
    std::size_t k = 0;
    while (own[k] <= kReached || together_[h - 1][parts - k] + own[k] != together_[h][parts]) ++k;
    read(heavy[h], k, sessions, ways, prices, choice);
    parts -= k;
  }
  read(heavy[0], parts, sessions, ways, prices, choice);
  return sum;
}

void WeekFamilies::fill(std::size_t family, std::span<const Session> sessions, const std::vector<Ways>& ways,
                        const WeekPrices& prices) {
  FamilyTable& table = families_[family];
  const std::size_t width = columns(table);
  const std::size_t rows = cap_[family] + 1;
  table.stage.resize(table.items.size() + 1);
  table.stage[0].assign(rows * width, kNever);
  std::fill_n(table.stage[0].begin(), width, 0);
  for (std::size_t k = 0; k < table.items.size(); ++k) add_item(family, k, sessions, ways, prices);
  table.best.assign(width, kNever);
  for (std::size_t c = 0; c < rows; ++c) {
    raise_row(table.best.data(), table.stage.back().data() + c * width, static_cast<std::int32_t>(worth_[family][c]),
              static_cast<int>(width));
  }
}

void WeekFamilies::add_item(std::size_t family, std::size_t k, std::span<const Session> sessions,
                            const std::vector<Ways>& ways, const WeekPrices& prices) {
  FamilyTable& table = families_[family];
  const Item& item = table.items[k];
  const std::size_t width = columns(table);
  const std::size_t cap = cap_[family];
  const Session& session = sessions[item.session];
  const Ways& at = ways[item.session];
  const std::vector<std::int32_t>& from = table.stage[k];
  std::vector<std::int32_t>& to = table.stage[k + 1];
  if (may(at, item.member, kLeftOut)) {
    to = from;
  } else {
    to.assign(from.size(), kNever);
  }
  const std::vector<Option>& all = options(session, item.member);
  for (int o = 0; o < static_cast<int>(all.size()); ++o) {
    const Option& option = all[static_cast<std::size_t>(o)];
    if (!may(at, item.member, way_of(o))) continue;
    const std::size_t parts = parts_of(option);
    if (parts >= width) continue;
    const std::int32_t earns = earning(item, family, option, prices);
    for (std::size_t c = 0; c <= cap; ++c) {
      if (from[c * width + width - 1] <= kReached) continue;
      const std::size_t next = std::min(cap, c + static_cast<std::size_t>(option.credits));
      if (width == 1) {
        to[next] = std::max(to[next], from[c] + earns);
        continue;
      }
      raise_row(to.data() + next * width + parts, from.data() + c * width, earns, static_cast<int>(width - parts));
    }
  }
}

// The doses that the family's table holds where it may take so many parts.
void WeekFamilies::read(std::size_t family, std::size_t parts, std::span<const Session> sessions,
                        const std::vector<Ways>& ways, const WeekPrices& prices, std::vector<int>& choice) const {
  const FamilyTable& table = families_[family];
  const std::size_t width = columns(table);
  const std::size_t cap = cap_[family];
  std::size_t credits = 0;
  while (table.stage.back()[credits * width + parts] + static_cast<std::int32_t>(worth_[family][credits]) !=
         table.best[parts])
    ++credits;
  for (std::size_t k = table.items.size(); k-- > 0;) {
    const Item& item = table.items[k];
    const std::vector<std::int32_t>& from = table.stage[k];
    const std::int32_t value = table.stage[k + 1][credits * width + parts];
    const Ways& at = ways[item.session];
    if (may(at, item.member, kLeftOut) && from[credits * width + parts] == value) continue;
    const std::vector<Option>& all = options(sessions[item.session], item.member);
    bool found = false;
    for (int o = 0; o < static_cast<int>(all.size()) && !found; ++o) {
      const Option& option = all[static_cast<std::size_t>(o)];
      const std::size_t takes = parts_of(option);
      if (!may(at, item.member, way_of(o)) || takes > parts) continue;
      const std::int32_t earns = earning(item, family, option, prices);
      const auto gives = static_cast<std::size_t>(option.credits);
      // At the cap what goes over is lost.
      const std::size_t low = credits < cap ? credits - std::min(credits, gives) : cap - std::min(cap, gives);
      for (std::size_t c = low; c <= credits && !found; ++c) {
        if (std::min(cap, c + gives) != credits) continue;
        const std::int32_t before = from[c * width + parts - takes];
        if (before <= kReached || before + earns != value) continue;
        choice[item.place] = o;
        credits = c;
        parts -= takes;
        found = true;
      }
    }
  }
}

}  // namespace lanework::block
