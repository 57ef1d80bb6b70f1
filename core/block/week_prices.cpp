#include "core/block/week_prices.h"

#include <algorithm>

namespace lanework::block {
namespace {

// Found by trial.
constexpr double kUseScale = 1.0;
constexpr double kCreditScale = 0.3;
constexpr double kLoadScale = 6.0;
// Of what a credit is worth at the most.
constexpr double kFirstShare = 0.7;

std::ptrdiff_t place(std::size_t i) { return static_cast<std::ptrdiff_t>(i); }

}  // namespace

Prices WeekLayout::scales() const {
  Prices scales(count(), kLoadScale);
  std::fill_n(scales.begin(), place(at_whole(0)), kUseScale);
  std::fill(scales.begin() + place(at_credit(0, 0)), scales.begin() + place(at_week_load(0)), kCreditScale);
  return scales;
}

void KnownPrices::keep(const WeekLayout& layout, const Problem& problem, const std::vector<int>& members,
                       const Prices& prices) {
  const std::size_t drills = problem.drills.size();
  uses_.resize(layout.sessions * drills, 0);
  for (std::size_t i = 0; i < layout.sessions; ++i) {
    for (std::size_t m = 0; m < members.size(); ++m)
      uses_[i * drills + static_cast<std::size_t>(members[m])] = prices[layout.at_use(i, m)];
  }
  others_.assign(prices.begin() + place(layout.at_whole(0)), prices.end());
}

Prices KnownPrices::start(const WeekLayout& layout, const Problem& problem, const std::vector<int>& members) const {
  Prices prices(layout.count(), 0);
  const std::size_t drills = problem.drills.size();
  for (std::size_t i = 0; i < layout.sessions; ++i) {
    if (uses_.empty()) {
      for (std::size_t f = 0; f < problem.families.size(); ++f)
        prices[layout.at_credit(i, f)] = static_cast<double>(problem.families[f].weight * kFullPoints) * kFirstShare;
      continue;
    }
    for (std::size_t m = 0; m < members.size(); ++m)
      prices[layout.at_use(i, m)] = uses_[i * drills + static_cast<std::size_t>(members[m])];
  }
  if (!uses_.empty()) std::copy(others_.begin(), others_.end(), prices.begin() + place(layout.at_whole(0)));
  return prices;
}

}  // namespace lanework::block
