#include "core/block/first_sets.h"

#include <algorithm>
#include <optional>

#include "core/block/bundle.h"
#include "core/block/dual.h"
#include "core/block/open_part.h"

namespace lanework::block {
namespace {

// Open somewhere in the first spell.
std::vector<char> open_drills(const Problem& problem) {
  std::vector<char> out;
  for (std::size_t d = 0; d < problem.drills.size(); ++d) out.push_back(is_open(problem, 0, d) ? 1 : 0);
  return out;
}

int family_of(const Problem& problem, std::size_t d) {
  return problem.groups[static_cast<std::size_t>(problem.drills[d].group)].family;
}

// Every set that keeps sizes and swaps, unless there are more than so many.
class AllSets {
 public:
  AllSets(const Problem& problem, std::size_t most) : p_(problem), most_(most), set_(problem.drills.size(), 0) {
    for (const Family& family : problem.families) left_.push_back(family.drills);
  }
  std::optional<std::vector<std::vector<char>>> list() {
    go_on(0, p_.first_swaps);
    if (found_.size() > most_) return {};
    return std::move(found_);
  }

 private:
  const Problem& p_;
  const std::size_t most_;
  std::vector<char> set_;
  std::vector<int> left_;  // by family: places that are not filled
  std::vector<std::vector<char>> found_;

  void go_on(std::size_t d, int swaps) {
    if (found_.size() > most_ || swaps < 0) return;
    if (d == set_.size()) {
      if (std::all_of(left_.begin(), left_.end(), [](int left) { return left == 0; })) found_.push_back(set_);
      return;
    }
    const auto f = static_cast<std::size_t>(family_of(p_, d));
    const bool current = p_.drills[d].current;
    for (const bool in : {current, !current}) {
      if ((in && left_[f] == 0) || (!in && must_be(p_.drills[d], 0))) continue;
      set_[d] = in ? 1 : 0;
      left_[f] -= in ? 1 : 0;
      go_on(d + 1, swaps - (in && !current ? 1 : 0));
      left_[f] += in ? 1 : 0;
      set_[d] = 0;
    }
  }
};

}  // namespace

FirstSets first_sets(const Problem& problem, std::size_t most) {
  FirstSets out;
  const std::vector<char> base = empty_plan(problem).sets.front();
  if (problem.first_swaps == 0) {
    out.sets = {base};
    return out;
  }
  if (auto all = AllSets(problem, most).list()) {
    out.sets = std::move(*all);
    return out;
  }
  const std::vector<char> open = open_drills(problem);
  std::vector<std::size_t> places;  // drills of the base whose place is to be filled
  int fixed = 0;                    // drills of the base that come in as the lead has fixed
  for (std::size_t d = 0; d < base.size(); ++d) {
    if (base[d] == 0) continue;
    if (must_be(problem.drills[d], 0)) {
      // Which drill leaves for it is not listed.
      fixed += problem.drills[d].current ? 0 : 1;
      continue;
    }
    const bool closed = problem.drills[d].current && open[d] == 0;
    if (closed) out.closed.push_back(d);
    if (closed || !problem.drills[d].current) places.push_back(d);
  }
  const int swaps = problem.first_swaps - fixed;
  // With fewer swaps than places some closed drills stay, with more others may come in, in ways that are not listed.
  out.whole = fixed == 0 && static_cast<int>(places.size()) == swaps;
  places.resize(std::min(places.size(), static_cast<std::size_t>(std::max(0, swaps))));
  out.sets = {base};
  for (const std::size_t place : places) {
    std::vector<std::vector<char>> filled;
    for (const std::vector<char>& set : out.sets) {
      if (!problem.drills[place].current) filled.push_back(set);
      for (std::size_t d = 0; d < base.size(); ++d) {
        if (set[d] != 0 || open[d] == 0 || problem.drills[d].current ||
            family_of(problem, d) != family_of(problem, place))
          continue;
        filled.push_back(set);
        filled.back()[place] = 0;
        filled.back()[d] = 1;
      }
    }
    if (!filled.empty()) out.sets = std::move(filled);
    std::sort(out.sets.begin(), out.sets.end());
    out.sets.erase(std::unique(out.sets.begin(), out.sets.end()), out.sets.end());
    if (out.sets.size() > most) {
      out.sets.resize(most);
      out.whole = false;
    }
  }
  return out;
}

std::int64_t bound_beside(const Problem& problem, std::size_t closed, int rounds) {
  SettledSets settled(static_cast<std::size_t>(problem.spells),
                      std::vector<Settled>(problem.drills.size(), Settled::kOpen));
  for (std::size_t d = 0; d < problem.drills.size(); ++d) {
    for (std::size_t p = 0; p < settled.size(); ++p) {
      if (must_be(problem.drills[d], p)) settled[p][d] = Settled::kIn;
    }
  }
  settled.front()[closed] = Settled::kIn;
  std::int64_t sum = 0;
  for (int spell = 0; spell < problem.spells; ++spell) {
    const OpenPart part = open_part(problem, spell);
    Dual dual(part.problem, part.times);
    if (!dual.settle(settled)) return INT64_MIN;
    Bundle bundle(dual.first_prices(), dual.scales(), dual.layout().credit);
    DualPoint point;
    std::int64_t bound = INT64_MAX;
    for (int round = 0; round < rounds; ++round) {
      dual.evaluate(bundle.next(), point);
      bound = std::min(bound, point.bound);
      const double points = static_cast<double>(point.bound) / kFine;
      bundle.add(points, point.gradient, points * 0.95);
    }
    sum += bound;
  }
  return sum;
}

}  // namespace lanework::block
