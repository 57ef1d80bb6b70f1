#include "core/people/grouping.h"

#include <algorithm>
#include <array>
#include <optional>
#include <tuple>

#include "core/people/fewest_alone.h"

namespace lanework::people {
namespace {

constexpr int kNobody = -1;
constexpr std::int64_t kAnyDifference = std::int64_t{1} << 40;  // above every difference

// Worst difference, then total * scale + non-contact groups.
struct Value {
  std::int64_t worst = 0;
  std::int64_t cost = 0;
};

struct Pairing {
  Value value;
  std::int64_t free_cost = 0;  // the least cost were the worst difference no matter
  PerfectMatching matching;
};

using Trio = std::array<int, 3>;

class GroupSearch {
 public:
  explicit GroupSearch(const PairTable& table) : table_(table), scale_(table.size() + 1) {}

  Grouping run() {
    std::vector<int> all;
    for (int i = 0; i < table_.size(); ++i) all.push_back(i);
    const int alone = table_.size() - 2 * largest_matching(table_.difference, kAnyDifference);
    if (alone > 0) {
      if (const auto trio = best_trio(all, alone - 1)) {
        const Value least = trio_value(*trio);
        return finish(without(all, {(*trio)[0], (*trio)[1], (*trio)[2]}), alone - 1, least.worst, &*trio);
      }
    }
    return finish(all, alone, 0, nullptr);
  }

 private:
  static std::vector<int> without(const std::vector<int>& members, const std::vector<int>& gone) {
    std::vector<int> rest;
    for (const int member : members) {
      if (std::find(gone.begin(), gone.end(), member) == gone.end()) rest.push_back(member);
    }
    return rest;
  }

  [[nodiscard]] bool permitted(int a, int b) const { return table_.difference.at(a, b) != kNoEdge; }
  [[nodiscard]] std::int64_t pair_cost(int a, int b) const {
    return table_.difference.at(a, b) * scale_ + table_.non_contact.at(a, b);
  }

  // The members, and one empty place for each who stays alone: empty places cost nothing.
  [[nodiscard]] CostTable places(const std::vector<int>& members, int alone, bool costs, std::int64_t most) const {
    const int count = static_cast<int>(members.size());
    CostTable out(count + alone);
    for (int i = 0; i < count; ++i) {
      const int a = members[static_cast<std::size_t>(i)];
      for (int j = 0; j < i; ++j) {
        const int b = members[static_cast<std::size_t>(j)];
        if (!permitted(a, b) || table_.difference.at(a, b) > most) continue;
        out.set(i, j, costs ? pair_cost(a, b) : table_.difference.at(a, b));
      }
      for (int empty = 0; empty < alone; ++empty) out.set(i, count + empty, 0);
    }
    return out;
  }

  // The best pairs of the members with exactly so many alone; the worst difference counts from floor up.
  // Empty when there are none.
  [[nodiscard]] std::optional<Pairing> best_pairs(const std::vector<int>& members, int alone,
                                                  std::int64_t floor) const {
    auto free = cheapest_perfect_matching(places(members, alone, true, kAnyDifference));
    if (!free) return {};
    const CostTable differences = places(members, alone, false, kAnyDifference);
    std::int64_t worst = floor;
    for (int i = 0; i < differences.size(); ++i) {
      worst = std::max(worst, differences.at(i, free->mate[static_cast<std::size_t>(i)]));
    }
    const std::int64_t least = least_threshold(differences, thresholds(differences, floor, worst));
    const std::int64_t free_cost = free->cost;
    if (least < worst) free = cheapest_perfect_matching(places(members, alone, true, least));
    return Pairing{{least, free->cost}, free_cost, std::move(*free)};
  }

  // Differences that can be the worst: not below the floor, nor below what the loneliest must bridge.
  static std::vector<std::int64_t> thresholds(const CostTable& differences, std::int64_t floor, std::int64_t worst) {
    std::int64_t least = floor;
    for (int i = 0; i < differences.size(); ++i) {
      std::int64_t nearest = kAnyDifference;
      for (int j = 0; j < differences.size(); ++j) {
        if (differences.at(i, j) != kNoEdge) nearest = std::min(nearest, differences.at(i, j));
      }
      least = std::max(least, nearest);
    }
    std::vector<std::int64_t> out = {least};
    for (int i = 0; i < differences.size(); ++i) {
      for (int j = 0; j < i; ++j) {
        const std::int64_t difference = differences.at(i, j);
        if (difference > least && difference <= worst) out.push_back(difference);
      }
    }
    std::sort(out.begin(), out.end());
    out.erase(std::unique(out.begin(), out.end()), out.end());
    return out;
  }

  [[nodiscard]] std::int64_t trio_non_contact(const Trio& t) const {
    return std::max(
        {table_.non_contact.at(t[0], t[1]), table_.non_contact.at(t[0], t[2]), table_.non_contact.at(t[1], t[2])});
  }
  [[nodiscard]] Value trio_value(const Trio& t) const {
    const std::int64_t ab = table_.difference.at(t[0], t[1]);
    const std::int64_t ac = table_.difference.at(t[0], t[2]);
    const std::int64_t bc = table_.difference.at(t[1], t[2]);
    return {std::max({ab, ac, bc}), (ab + ac + bc) * scale_ + trio_non_contact(t)};
  }

  struct Candidate {
    Value bound;
    Trio trio;
    friend bool operator<(const Candidate& a, const Candidate& b) {
      return std::tie(a.bound.worst, a.bound.cost, a.trio) < std::tie(b.bound.worst, b.bound.cost, b.trio);
    }
  };

  // Take one member out of a trio: what is left is a pairing of all others. So each of the three gives a
  // bound from below on every grouping with this trio.
  [[nodiscard]] std::vector<Candidate> candidates(const std::vector<int>& members, int alone) const {
    std::vector<std::optional<Value>> rest;  // worst, and cost were the worst no matter
    for (const int member : members) {
      const auto pairs = best_pairs(without(members, {member}), alone, 0);
      rest.push_back(pairs ? std::optional<Value>({pairs->value.worst, pairs->free_cost}) : std::nullopt);
    }
    const auto bound_by = [&](int out, int one, int other) {
      const std::int64_t first = table_.difference.at(out, one);
      const std::int64_t second = table_.difference.at(out, other);
      const Value& others = *rest[static_cast<std::size_t>(out)];
      return Value{std::max({others.worst, first, second}), others.cost + (first + second) * scale_};
    };
    std::vector<Candidate> out;
    const int count = static_cast<int>(members.size());
    for (int a = 0; a < count; ++a) {
      for (int b = a + 1; b < count; ++b) {
        if (!permitted(a, b)) continue;
        for (int c = b + 1; c < count; ++c) {
          if (!permitted(a, c) || !permitted(b, c)) continue;
          const auto has = [&](int i) { return rest[static_cast<std::size_t>(i)].has_value(); };
          if (!has(a) || !has(b) || !has(c)) continue;
          const Value x = bound_by(a, b, c);
          const Value y = bound_by(b, a, c);
          const Value z = bound_by(c, a, b);
          out.push_back({{std::max({x.worst, y.worst, z.worst}), std::max({x.cost, y.cost, z.cost})}, {a, b, c}});
        }
      }
    }
    std::sort(out.begin(), out.end());
    return out;
  }

  // Tries trios by their bounds until no bound can beat what is found; equal values go to the first trio.
  [[nodiscard]] std::optional<Trio> best_trio(const std::vector<int>& members, int alone) const {
    std::optional<Candidate> best;
    for (const Candidate& candidate : candidates(members, alone)) {
      if (best && *best < candidate) break;
      const Trio& t = candidate.trio;
      const Value own = trio_value(t);
      const auto pairs = best_pairs(without(members, {t[0], t[1], t[2]}), alone, own.worst);
      if (!pairs) continue;
      const Candidate found{{pairs->value.worst, pairs->value.cost + own.cost}, t};
      if (!best || found < *best) best = found;
    }
    if (!best) return {};
    return best->trio;
  }

  // Of all best pairings the one whose first member has the first possible mate, and so on. A pair is kept
  // when the others can still be paired at the same cost; reduced costs spare most of the trials.
  Grouping finish(std::vector<int> members, int alone, std::int64_t floor, const Trio* trio) const {
    Grouping out;
    auto now = best_pairs(members, alone, floor);
    out.worst = now->value.worst;
    if (trio != nullptr) take(out, {trio->begin(), trio->end()});
    PerfectMatching matching = std::move(now->matching);
    while (!members.empty()) {
      const int mate = settle_first(members, alone, out.worst, matching);
      const int first = members.front();
      if (mate == kNobody) {
        out.alone.push_back(first);
        --alone;
        members = without(members, {first});
      } else {
        take(out, {first, mate});
        members = without(members, {first, mate});
      }
      if (!members.empty()) matching = *cheapest_perfect_matching(places(members, alone, true, out.worst));
    }
    std::sort(out.groups.begin(), out.groups.end());
    return out;
  }

  // The first mate of the first member with which the cost stays as it is; kNobody: an empty place.
  [[nodiscard]] int settle_first(const std::vector<int>& members, int alone, std::int64_t most,
                                 const PerfectMatching& matching) const {
    const int first = members.front();
    for (std::size_t j = 1; j < members.size(); ++j) {
      const int mate = members[j];
      if (matching.mate[0] == static_cast<int>(j)) return mate;
      if (matching.reduced.at(0, static_cast<int>(j)) != 0) continue;
      const auto rest = cheapest_perfect_matching(places(without(members, {first, mate}), alone, true, most));
      if (rest && rest->cost + pair_cost(first, mate) == matching.cost) return mate;
    }
    return kNobody;
  }

  void take(Grouping& out, std::vector<int> group) const {
    std::int64_t non_contact = 0;
    for (std::size_t i = 0; i < group.size(); ++i) {
      for (std::size_t j = 0; j < i; ++j) {
        out.total += table_.difference.at(group[i], group[j]);
        non_contact = std::max(non_contact, table_.non_contact.at(group[i], group[j]));
      }
    }
    out.non_contact_groups += static_cast<int>(non_contact);
    out.groups.push_back(std::move(group));
  }

  const PairTable& table_;
  std::int64_t scale_;
};

}  // namespace

Grouping best_grouping(const PairTable& table) { return GroupSearch(table).run(); }

}  // namespace lanework::people
