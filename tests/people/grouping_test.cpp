// The search for groups against trying every grouping of small squads.
#include "core/people/grouping.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <cstdlib>
#include <optional>
#include <tuple>
#include <utility>

namespace lanework::people {
namespace {

using Group = std::vector<int>;

// Everything that ranks a grouping, in the order of docs/model/partners.md.
struct Rank {
  int alone = 0;
  std::int64_t worst = 0;
  std::int64_t total = 0;
  int non_contact = 0;
  Group trio;
  Group mates;  // of each by position; who is alone, and the trio, count as last
  std::vector<Group> groups;
  [[nodiscard]] auto key() const { return std::tie(alone, worst, total, non_contact, trio, mates); }
};

Rank rank_of(const PairTable& table, const std::vector<Group>& groups) {
  Rank rank;
  rank.mates.assign(static_cast<std::size_t>(table.size()), table.size());
  rank.alone = table.size();
  rank.groups = groups;
  for (const Group& group : groups) {
    rank.alone -= static_cast<int>(group.size());
    std::int64_t without = 0;
    for (const int a : group) {
      for (const int b : group) {
        if (a >= b) continue;
        rank.worst = std::max(rank.worst, table.difference.at(a, b));
        rank.total += table.difference.at(a, b);
        without = std::max(without, table.non_contact.at(a, b));
      }
    }
    rank.non_contact += static_cast<int>(without);
    if (group.size() == 3) {
      rank.trio = group;
    } else {
      rank.mates[static_cast<std::size_t>(group[0])] = group[1];
      rank.mates[static_cast<std::size_t>(group[1])] = group[0];
    }
  }
  std::sort(rank.groups.begin(), rank.groups.end());
  return rank;
}

void try_everything(const PairTable& table, int next, std::vector<bool>& used, std::vector<Group>& groups, bool trio,
                    std::optional<Rank>& best) {
  while (next < table.size() && used[static_cast<std::size_t>(next)]) ++next;
  if (next >= table.size()) {
    const Rank rank = rank_of(table, groups);
    if (!best || rank.key() < best->key()) best = rank;
    return;
  }
  used[static_cast<std::size_t>(next)] = true;
  try_everything(table, next + 1, used, groups, trio, best);
  for (int b = next + 1; b < table.size(); ++b) {
    if (used[static_cast<std::size_t>(b)] || table.difference.at(next, b) == kNoEdge) continue;
    used[static_cast<std::size_t>(b)] = true;
    groups.push_back({next, b});
    try_everything(table, next + 1, used, groups, trio, best);
    groups.pop_back();
    for (int c = b + 1; c < table.size() && !trio; ++c) {
      if (used[static_cast<std::size_t>(c)] || table.difference.at(next, c) == kNoEdge ||
          table.difference.at(b, c) == kNoEdge) {
        continue;
      }
      used[static_cast<std::size_t>(c)] = true;
      groups.push_back({next, b, c});
      try_everything(table, next + 1, used, groups, true, best);
      groups.pop_back();
      used[static_cast<std::size_t>(c)] = false;
    }
    used[static_cast<std::size_t>(b)] = false;
  }
  used[static_cast<std::size_t>(next)] = false;
}

Rank by_trying_everything(const PairTable& table) {
  std::vector<bool> used(static_cast<std::size_t>(table.size()), false);
  std::vector<Group> groups;
  std::optional<Rank> best;
  try_everything(table, 0, used, groups, false, best);
  return *best;
}

PairTable random_table(int size, bool on_a_line) {
  PairTable table(size);
  const int most = *rc::gen::element(1, 3, 10, 1000);
  std::vector<std::int64_t> places;
  for (int i = 0; i < size; ++i) places.push_back(*rc::gen::inRange(0, most));
  const int forbidden_in_ten = *rc::gen::element(0, 1, 3, 5, 8);
  for (int i = 0; i < size; ++i) {
    for (int j = 0; j < i; ++j) {
      table.non_contact.set(i, j, *rc::gen::inRange(0, 3) == 0 ? 1 : 0);
      if (*rc::gen::inRange(0, 10) < forbidden_in_ten) continue;
      const std::int64_t line = std::abs(places[static_cast<std::size_t>(i)] - places[static_cast<std::size_t>(j)]);
      table.difference.set(i, j, on_a_line ? line : *rc::gen::inRange(0, most));
    }
  }
  return table;
}

void expect_best(const PairTable& table) {
  const Grouping found = best_grouping(table);
  const Rank best = by_trying_everything(table);
  RC_ASSERT(static_cast<int>(found.alone.size()) == best.alone);
  RC_ASSERT(found.worst == best.worst);
  RC_ASSERT(found.total == best.total);
  RC_ASSERT(found.non_contact_groups == best.non_contact);
  RC_ASSERT(found.groups == best.groups);
}

TEST(Grouping, EqualsTryingEverythingOnALine) {
  EXPECT_TRUE(rc::check([] { expect_best(random_table(*rc::gen::inRange(1, 9), true)); }));
}

TEST(Grouping, EqualsTryingEverythingOnAnyTable) {
  EXPECT_TRUE(rc::check([] { expect_best(random_table(*rc::gen::inRange(1, 9), false)); }));
}

// Larger squads by another way: best values over subsets of players, in two passes.
class BySubsets {
 public:
  explicit BySubsets(const PairTable& table) : table_(table), all_((std::size_t{1} << table.size()) - 1) {}

  // The least (alone, x) over all groupings with differences up to most: x is the worst difference, or else
  // the total with the non-contact groups below it.
  std::pair<int, std::int64_t> least(std::int64_t most, bool worst) {
    worst_ = worst;
    most_ = most;
    best_.assign(2 * (all_ + 1), std::nullopt);
    return value(0, false);
  }

 private:
  using Value = std::pair<int, std::int64_t>;

  [[nodiscard]] bool may(int a, int b) const {
    return table_.difference.at(a, b) != kNoEdge && table_.difference.at(a, b) <= most_;
  }
  [[nodiscard]] Value with(std::int64_t differences, std::int64_t largest, std::int64_t without, Value rest) const {
    if (worst_) return {rest.first, std::max(rest.second, largest)};
    return {rest.first, rest.second + differences * 100 + without};
  }

  Value value(std::size_t used, bool trio) {
    if (used == all_) return {0, 0};
    auto& known = best_[2 * used + (trio ? 1U : 0U)];
    if (known) return *known;
    int a = 0;
    while ((used >> a & 1U) != 0) ++a;
    const std::size_t with_a = used | std::size_t{1} << a;
    Value best = value(with_a, trio);
    ++best.first;
    const CostTable& d = table_.difference;
    const CostTable& n = table_.non_contact;
    for (int b = a + 1; b < table_.size(); ++b) {
      if ((used >> b & 1U) != 0 || !may(a, b)) continue;
      const std::size_t with_b = with_a | std::size_t{1} << b;
      best = std::min(best, with(d.at(a, b), d.at(a, b), n.at(a, b), value(with_b, trio)));
      for (int c = b + 1; c < table_.size() && !trio; ++c) {
        if ((used >> c & 1U) != 0 || !may(a, c) || !may(b, c)) continue;
        best = std::min(
            best, with(d.at(a, b) + d.at(a, c) + d.at(b, c), std::max({d.at(a, b), d.at(a, c), d.at(b, c)}),
                       std::max({n.at(a, b), n.at(a, c), n.at(b, c)}), value(with_b | std::size_t{1} << c, true)));
      }
    }
    known = best;
    return best;
  }

  const PairTable& table_;
  std::size_t all_;
  bool worst_ = true;
  std::int64_t most_ = 0;
  std::vector<std::optional<Value>> best_;
};

TEST(Grouping, IsBestInLargerSquads) {
  EXPECT_TRUE(rc::check([] {
    const PairTable table = random_table(*rc::gen::inRange(8, 13), *rc::gen::arbitrary<bool>());
    const Grouping found = best_grouping(table);
    BySubsets subsets(table);
    const auto [alone, worst] = subsets.least(1000, true);
    RC_ASSERT(static_cast<int>(found.alone.size()) == alone);
    RC_ASSERT(found.worst == worst);
    RC_ASSERT(found.total * 100 + found.non_contact_groups == subsets.least(worst, false).second);
  }));
}

}  // namespace
}  // namespace lanework::people
