#include "core/block/family_kernel.h"

#include <algorithm>
#include <bit>
#include <cassert>

#include "core/block/session_kernel.h"

namespace lanework::block {
namespace {
constexpr std::int32_t kNever = -(std::int32_t{1} << 29);
}  // namespace

FamilyKernel::FamilyKernel(const Problem& problem, int family, std::vector<int> times)
    : p_(problem),
      family_(static_cast<std::size_t>(family)),
      times_(std::move(times)),
      week_sessions_(problem.weeks.size()) {
  for (std::size_t d = 0; d < problem.drills.size(); ++d) {
    const int group = problem.drills[d].group;
    if (problem.groups[static_cast<std::size_t>(group)].family == family) drills_.push_back(static_cast<int>(d));
  }
  for (std::size_t s = 0; s < problem.sessions.size(); ++s) {
    week_sessions_[static_cast<std::size_t>(problem.sessions[s].week)].push_back(static_cast<int>(s));
  }
  const Family& own = problem.families[family_];
  int most = 0;
  for (const Week& week : problem.weeks) most = std::max(most, week.target[family_]);
  // From here on no week gains by a credit.
  credits_ = static_cast<std::size_t>(most + counted_beyond(most)) + 1;
  for (const Week& week : problem.weeks) {
    Row row;
    for (std::size_t c = 0; c < credits_; ++c) {
      const int credits = week.fixed[family_] + static_cast<int>(c);
      row.push_back(static_cast<std::int32_t>(worth(own, week.target[family_], credits) * kFine));
    }
    worth_.push_back(std::move(row));
  }
  list_subsets();
  alone_.assign(drills_.size(), Row(credits_, kNever));
  together_.assign(subsets_.size(), Row(credits_, kNever));
  together_[0][0] = 0;
  sum_.resize(2 * credits_);
  spell_.assign(static_cast<std::size_t>(problem.spells), std::vector<std::int64_t>(subsets_.size(), 0));
  from_.assign(static_cast<std::size_t>(problem.spells), std::vector<int>(subsets_.size(), 0));
}

void FamilyKernel::list_subsets() {
  const int most = p_.families[family_].drills;
  subsets_.push_back({0, -1, -1, 0});
  for (std::size_t i = 0; i < subsets_.size(); ++i) {
    const Subset parent = subsets_[i];
    if (parent.size == most) continue;
    for (int d = parent.last + 1; d < static_cast<int>(drills_.size()); ++d) {
      subsets_.push_back({parent.bits | (std::uint32_t{1} << d), static_cast<int>(i), d, parent.size + 1});
    }
  }
  for (std::size_t i = 0; i < subsets_.size(); ++i) {
    if (subsets_[i].size == most) wholes_.push_back(static_cast<int>(i));
  }
  assert(!wholes_.empty());
}

bool FamilyKernel::find_allowed(const SettledDrills& settled) {
  allowed_.assign(spell_.size(), {});
  wanted_.assign(subsets_.size(), 0);
  for (std::size_t p = 0; p < spell_.size(); ++p) {
    for (const int whole : wholes_) {
      const std::uint32_t bits = subsets_[static_cast<std::size_t>(whole)].bits;
      if ((settled.in[p] & ~bits) != 0 || (settled.out[p] & bits) != 0) continue;
      allowed_[p].push_back(whole);
      for (int m = whole; m >= 0 && wanted_[static_cast<std::size_t>(m)] == 0;
           m = subsets_[static_cast<std::size_t>(m)].parent)
        wanted_[static_cast<std::size_t>(m)] = 1;
    }
    if (allowed_[p].empty()) return false;
  }
  return true;
}

const std::vector<Option>& FamilyKernel::options(int session, std::size_t drill) const {
  const Session& at = p_.sessions[static_cast<std::size_t>(session)];
  return p_.kinds[static_cast<std::size_t>(at.kind)].options[static_cast<std::size_t>(drills_[drill])];
}

// The most that the drill's uses earn in the week, by the credits they give.
void FamilyKernel::week_of_drill(std::size_t w, std::size_t drill, std::span<const std::int32_t> earns,
                                 std::span<const std::int32_t> pays, Row& out) const {
  const auto left_out = static_cast<std::int32_t>(p_.drills[static_cast<std::size_t>(drills_[drill])].left_out * kFine);
  std::fill(out.begin(), out.end(), kNever);
  out[0] = 0;
  std::size_t reached = 0;
  for (const int session : week_sessions_[w]) {
    const std::vector<Option>& all = options(session, drill);
    if (all.empty()) continue;
    const auto s = static_cast<std::size_t>(session);
    const std::int32_t use = earns[s * p_.drills.size() + static_cast<std::size_t>(drills_[drill])];
    std::size_t most = 0;
    for (const Option& option : all) most = std::max(most, static_cast<std::size_t>(option.credits));
    const std::size_t next = std::min(credits_ - 1, reached + most);
    // From the top down, so that each state is read before it is written.
    for (std::size_t c = next + 1; c-- > 0;) {
      std::int32_t best = c <= reached ? out[c] - left_out : kNever;
      for (const Option& option : all) {
        const auto gives = static_cast<std::size_t>(option.credits);
        const std::int32_t value = use - pays[s] * option.credits;
        if (gives <= c && c - gives <= reached) best = std::max(best, out[c - gives] + value);
        // At the cap what goes over is lost.
        if (c == credits_ - 1) {
          for (std::size_t over = gives > c ? 0 : c - gives + 1; over < std::min(credits_, reached + 1); ++over)
            best = std::max(best, out[over] + value);
        }
      }
      out[c] = best;
    }
    reached = next;
  }
}

void FamilyKernel::add_rows(const Row& a, const Row& b, Row& out) {
  std::fill(sum_.begin(), sum_.end(), kNever);
  std::int32_t* __restrict sum = sum_.data();
  const std::int32_t* __restrict second = b.data();
  for (std::size_t i = 0; i < credits_; ++i) {
    if (a[i] <= kNever / 2) continue;
    const std::int32_t first = a[i];
    for (std::size_t j = 0; j < credits_; ++j) {
      const std::int32_t both = first + second[j];
      sum[i + j] = both > sum[i + j] ? both : sum[i + j];
    }
  }
  std::copy_n(sum_.begin(), credits_, out.begin());
  for (std::size_t c = credits_; c < 2 * credits_ - 1; ++c) out[credits_ - 1] = std::max(out[credits_ - 1], sum[c]);
}

void FamilyKernel::sweep_week(std::size_t w, std::span<const std::int32_t> earns, std::span<const std::int32_t> pays) {
  for (std::size_t d = 0; d < drills_.size(); ++d) week_of_drill(w, d, earns, pays, alone_[d]);
  std::vector<std::int64_t>& values = spell_[static_cast<std::size_t>(p_.weeks[w].spell)];
  for (std::size_t m = 0; m < subsets_.size(); ++m) {
    const Subset& subset = subsets_[m];
    if (wanted_[m] == 0) continue;
    if (subset.parent == 0) {
      together_[m] = alone_[static_cast<std::size_t>(subset.last)];
    } else if (subset.parent > 0) {
      add_rows(together_[static_cast<std::size_t>(subset.parent)], alone_[static_cast<std::size_t>(subset.last)],
               together_[m]);
    }
    if (subset.size != p_.families[family_].drills) continue;
    std::int32_t best = kNever;
    for (std::size_t c = 0; c < credits_; ++c) best = std::max(best, together_[m][c] + worth_[w][c]);
    values[m] += std::int64_t{best} * times_[w];
  }
}

void FamilyKernel::sort_by_value(std::size_t spell) {
  const std::vector<std::int64_t>& values = spell_[spell];
  order_ = allowed_[spell];
  std::sort(order_.begin(), order_.end(), [&](int a, int b) {
    const std::int64_t first = values[static_cast<std::size_t>(a)];
    const std::int64_t second = values[static_cast<std::size_t>(b)];
    return first != second ? first > second : a < b;
  });
}

void FamilyKernel::join_spells(const SetPrices& prices, FamilyPattern& out) {
  std::uint32_t current = 0;
  for (std::size_t d = 0; d < drills_.size(); ++d) {
    if (p_.drills[static_cast<std::size_t>(drills_[d])].current) current |= std::uint32_t{1} << d;
  }
  for (std::size_t p = 0; p < spell_.size(); ++p) {
    const std::int64_t in = p_.swap * kFine + prices.comes_in[p];
    const auto change = [&](std::uint32_t before, std::uint32_t after) { return in * std::popcount(after & ~before); };
    // From the best subset before downwards: once one falls short even without paying for a change, all do.
    const std::int64_t most_back = std::max<std::int64_t>(0, -in) * p_.families[family_].drills;
    if (p > 0) sort_by_value(p - 1);
    for (const int whole : allowed_[p]) {
      const auto m = static_cast<std::size_t>(whole);
      std::int64_t best = -change(current, subsets_[m].bits);
      int from = -1;
      for (std::size_t i = 0; p > 0 && i < order_.size(); ++i) {
        const auto before = static_cast<std::size_t>(order_[i]);
        if (from >= 0 && spell_[p - 1][before] + most_back <= best) break;
        const std::int64_t value = spell_[p - 1][before] - change(subsets_[before].bits, subsets_[m].bits);
        if (from < 0 || value > best) {
          best = value;
          from = order_[i];
        }
      }
      spell_[p][m] += best;
      from_[p][m] = from;
    }
  }
  const std::vector<std::int64_t>& last = spell_.back();
  int m = allowed_.back().front();
  for (const int whole : allowed_.back()) {
    if (last[static_cast<std::size_t>(whole)] > last[static_cast<std::size_t>(m)]) m = whole;
  }
  out.value = last[static_cast<std::size_t>(m)];
  out.members.assign(spell_.size(), 0);
  for (std::size_t p = spell_.size(); p-- > 0;) {
    out.members[p] = static_cast<std::uint32_t>(m);
    m = from_[p][static_cast<std::size_t>(m)];
  }
}

void FamilyKernel::read_drill(std::size_t w, std::size_t drill, std::size_t credits,
                              std::span<const std::int32_t> earns, std::span<const std::int32_t> pays,
                              FamilyPattern& out) {
  // Few sessions and options: every combination is looked at.
  const std::vector<int>& sessions = week_sessions_[w];
  const auto left_out = static_cast<std::int32_t>(p_.drills[static_cast<std::size_t>(drills_[drill])].left_out * kFine);
  std::vector<int> now(sessions.size(), -1);
  std::vector<int> best_options(sessions.size(), -1);
  std::int64_t best = std::int64_t{kNever} * 2;
  const auto look = [&](auto&& self, std::size_t i, std::size_t sum, std::int64_t value) -> void {
    if (i == sessions.size()) {
      if (std::min(sum, credits_ - 1) == credits && value > best) {
        best = value;
        best_options = now;
      }
      return;
    }
    const std::vector<Option>& all = options(sessions[i], drill);
    const auto s = static_cast<std::size_t>(sessions[i]);
    now[i] = -1;
    self(self, i + 1, sum, all.empty() ? value : value - left_out);
    const std::int32_t use = earns[s * p_.drills.size() + static_cast<std::size_t>(drills_[drill])];
    for (std::size_t o = 0; o < all.size(); ++o) {
      now[i] = static_cast<int>(o);
      self(self, i + 1, sum + static_cast<std::size_t>(all[o].credits), value + use - pays[s] * all[o].credits);
    }
    now[i] = -1;
  };
  look(look, 0, 0, 0);
  for (std::size_t i = 0; i < sessions.size(); ++i)
    out.option[static_cast<std::size_t>(sessions[i])][drill] = best_options[i];
}

void FamilyKernel::read_week(std::size_t w, int subset, std::span<const std::int32_t> earns,
                             std::span<const std::int32_t> pays, FamilyPattern& out) {
  std::vector<std::size_t> members;
  for (int m = subset; m > 0; m = subsets_[static_cast<std::size_t>(m)].parent)
    members.push_back(static_cast<std::size_t>(subsets_[static_cast<std::size_t>(m)].last));
  std::reverse(members.begin(), members.end());
  std::vector<Row> prefix(members.size() + 1, Row(credits_, kNever));
  prefix[0][0] = 0;
  for (std::size_t i = 0; i < members.size(); ++i) {
    week_of_drill(w, members[i], earns, pays, alone_[members[i]]);
    add_rows(prefix[i], alone_[members[i]], prefix[i + 1]);
  }
  std::size_t credits = 0;
  for (std::size_t c = 1; c < credits_; ++c) {
    if (prefix.back()[c] + worth_[w][c] > prefix.back()[credits] + worth_[w][credits]) credits = c;
  }
  for (std::size_t i = members.size(); i-- > 0;) {
    const Row& own = alone_[members[i]];
    bool found = false;
    for (std::size_t a = 0; a < credits_ && !found; ++a) {
      for (std::size_t b = 0; b < credits_ && !found; ++b) {
        if (std::min(a + b, credits_ - 1) != credits || prefix[i][a] + own[b] != prefix[i + 1][credits]) continue;
        read_drill(w, members[i], b, earns, pays, out);
        credits = a;
        found = true;
      }
    }
  }
}

bool FamilyKernel::solve(std::span<const std::int32_t> earns, std::span<const std::int32_t> pays,
                         const SetPrices& prices, const SettledDrills& settled, FamilyPattern& out) {
  if (!find_allowed(settled)) return false;
  for (std::vector<std::int64_t>& values : spell_) std::fill(values.begin(), values.end(), 0);
  for (std::size_t w = 0; w < p_.weeks.size(); ++w) sweep_week(w, earns, pays);
  join_spells(prices, out);
  out.option.assign(p_.sessions.size(), std::vector<int>(drills_.size(), -1));
  for (std::size_t w = 0; w < p_.weeks.size(); ++w) {
    read_week(w, static_cast<int>(out.members[static_cast<std::size_t>(p_.weeks[w].spell)]), earns, pays, out);
  }
  for (std::uint32_t& members : out.members) members = subsets_[members].bits;
  return true;
}

}  // namespace lanework::block
