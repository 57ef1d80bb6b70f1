#include "core/block/nearest_set.h"

#include <algorithm>
#include <tuple>

namespace lanework::block {
namespace {

struct Wish {
  double lean;  // more to the one that comes in than to the one that leaves
  std::size_t in;
  std::size_t out;
};

class NearestSet {
 public:
  NearestSet(const Problem& problem, std::size_t spell, const std::vector<double>& leaning, std::vector<char> before)
      : p_(problem), spell_(spell), leaning_(leaning), set_(std::move(before)) {}

  std::vector<char> run(const std::vector<char>& wished, int least, int most) {
    std::vector<Wish> wishes = pairs([&](std::size_t in, std::size_t) { return must_be(p_.drills[in], spell_); });
    int swaps = make(wishes, most);
    wishes = pairs([&](std::size_t in, std::size_t out) { return wished[in] != 0 && wished[out] == 0; });
    swaps += make(wishes, most - swaps);
    if (swaps < least) {
      wishes = pairs([](std::size_t, std::size_t) { return true; });
      make(wishes, least - swaps);
    }
    return std::move(set_);
  }

 private:
  const Problem& p_;
  const std::size_t spell_;
  const std::vector<double>& leaning_;
  std::vector<char> set_;

  [[nodiscard]] int family_of(std::size_t d) const {
    return p_.groups[static_cast<std::size_t>(p_.drills[d].group)].family;
  }

  template <class Wished>
  [[nodiscard]] std::vector<Wish> pairs(const Wished& wished) const {
    std::vector<Wish> out;
    for (std::size_t in = 0; in < set_.size(); ++in) {
      for (std::size_t leaves = 0; leaves < set_.size(); ++leaves) {
        if (set_[in] != 0 || set_[leaves] == 0 || family_of(in) != family_of(leaves)) continue;
        if (must_be(p_.drills[leaves], spell_) || !wished(in, leaves)) continue;
        out.push_back({leaning_[in] - leaning_[leaves], in, leaves});
      }
    }
    std::sort(out.begin(), out.end(), [](const Wish& a, const Wish& b) {
      return std::tie(b.lean, a.in, a.out) < std::tie(a.lean, b.in, b.out);
    });
    return out;
  }

  int make(const std::vector<Wish>& wishes, int most) {
    int made = 0;
    for (const Wish& wish : wishes) {
      if (made == most) break;
      if (set_[wish.in] != 0 || set_[wish.out] == 0) continue;
      set_[wish.in] = 1;
      set_[wish.out] = 0;
      ++made;
    }
    return made;
  }
};

}  // namespace

std::vector<char> nearest_set(const Problem& problem, std::size_t spell, const std::vector<double>& leaning,
                              std::vector<char> before, const std::vector<char>& wished, int least, int most) {
  return NearestSet(problem, spell, leaning, std::move(before)).run(wished, least, most);
}

}  // namespace lanework::block
