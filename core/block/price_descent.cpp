#include "core/block/price_descent.h"

#include <algorithm>

namespace lanework::block {
namespace {

// Found by trial, docs/model/block.md.
constexpr double kNewDirection = 0.05;
constexpr double kStepShrinks = 0.7;
constexpr int kPatience = 16;
// How often the families' sets are taken as a start for the search, once the prices say something.
constexpr int kSetsEvery = 5;
constexpr int kSetsAfter = 60;
// While no plan is known, the prices aim at this share of the best bound.
constexpr double kFirstAim = 0.92;

}  // namespace

PriceDescent::PriceDescent(const Problem& problem)
    : p_(problem), dual_(problem), scale_(dual_.layout().count, 1), prices_(dual_.layout().count, 0) {
  leaning_.assign(static_cast<std::size_t>(problem.spells), std::vector<double>(problem.drills.size(), 0));
  set_scales();
  set_first_prices();
  best_prices_ = prices_;
  direction_.assign(prices_.size(), 0);
}

PriceDescent::PriceDescent(const Problem& restricted, const PriceDescent& whole,
                           const std::vector<std::size_t>& drill_of)
    : PriceDescent(restricted) {
  const Layout& from = whole.dual_.layout();
  const Layout& to = dual_.layout();
  const std::vector<double>& known = whole.best_prices_;
  const std::size_t drills = whole.p_.drills.size();
  for (std::size_t s = 0; s < p_.sessions.size(); ++s) {
    for (std::size_t d = 0; d < drill_of.size(); ++d)
      prices_[to.use + s * drill_of.size() + d] = known[from.use + s * drills + drill_of[d]];
  }
  // Credits, ceilings and close pairs stand alike in both.
  for (std::size_t i = to.credit; i < to.most_in; ++i) prices_[i] = known[from.credit + (i - to.credit)];
  best_prices_ = prices_;
}

// Prices of one kind move together when a step changes each by a like share of its range.
void PriceDescent::set_scales() {
  const Layout& at = dual_.layout();
  const auto place = [&](std::size_t i) { return scale_.begin() + static_cast<std::ptrdiff_t>(i); };
  std::fill(place(at.credit), place(at.week_load), 0.12);
  std::fill(place(at.week_load), place(at.apart), 1.0);
  std::fill(place(at.most_in), scale_.end(), 0.6);
}

void PriceDescent::set_first_prices() {
  for (std::size_t s = 0; s < p_.sessions.size(); ++s) {
    for (std::size_t f = 0; f < p_.families.size(); ++f) {
      prices_[dual_.layout().credit + s * p_.families.size() + f] =
          static_cast<double>(p_.families[f].weight * kFullPoints) * 0.7;
    }
  }
}

void PriceDescent::descend(int rounds, Points value) {
  for (const int until = rounds_ + rounds; rounds_ < until; ++rounds_) {
    dual_.evaluate(prices_, point_);
    if (!note_bound()) continue;
    lean();
    if (rounds_ % kSetsEvery == 0 && rounds_ > kSetsAfter) wish_sets();
    move_prices(value);
  }
}

// False: too long without a better bound, back to the best prices with shorter steps.
bool PriceDescent::note_bound() {
  if (point_.bound < bound_) {
    bound_ = point_.bound;
    best_prices_ = prices_;
    since_better_ = 0;
    return true;
  }
  if (++since_better_ < kPatience) return true;
  since_better_ = 0;
  step_ *= kStepShrinks;
  prices_ = best_prices_;
  std::fill(direction_.begin(), direction_.end(), 0);
  return false;
}

void PriceDescent::move_prices(Points value) {
  double square = 0;
  for (std::size_t i = 0; i < prices_.size(); ++i) {
    direction_[i] = kNewDirection * point_.gradient[i] + (1 - kNewDirection) * direction_[i];
    const double moved = direction_[i] * scale_[i];
    square += moved * moved;
  }
  if (square == 0) return;
  const double aim = std::max(static_cast<double>(value), static_cast<double>(bound_) / kFine * kFirstAim);
  const double above = static_cast<double>(point_.bound) / kFine - aim;
  const double length = step_ * std::max(above, 1.0) / square;
  for (std::size_t i = 0; i < prices_.size(); ++i) {
    prices_[i] -= length * scale_[i] * scale_[i] * direction_[i];
    // Below 0 a price counts as 0; it does not wander off.
    if (i >= dual_.layout().credit) prices_[i] = std::max(0.0, prices_[i]);
  }
}

// A running average of the families' side: who is of which set.
void PriceDescent::lean() {
  constexpr double kMemory = 0.97;
  for (std::vector<double>& leaning : leaning_) {
    for (double& lean : leaning) lean *= kMemory;
  }
  for (std::size_t f = 0; f < p_.families.size(); ++f) {
    const std::vector<int>& drills = dual_.family(f).drills();
    for (std::size_t p = 0; p < leaning_.size(); ++p) {
      for (std::size_t i = 0; i < drills.size(); ++i) {
        if ((point_.patterns[f].members[p] >> i & 1U) != 0)
          leaning_[p][static_cast<std::size_t>(drills[i])] += 1 - kMemory;
      }
    }
  }
}

// The families' sets of this round, made to keep size and swaps, as a start for the search.
void PriceDescent::wish_sets() {
  Sets wished(leaning_.size(), std::vector<char>(p_.drills.size(), 0));
  for (std::size_t f = 0; f < p_.families.size(); ++f) {
    const std::vector<int>& drills = dual_.family(f).drills();
    for (std::size_t p = 0; p < wished.size(); ++p) {
      for (std::size_t i = 0; i < drills.size(); ++i)
        wished[p][static_cast<std::size_t>(drills[i])] = (point_.patterns[f].members[p] >> i & 1U) != 0 ? 1 : 0;
    }
  }
  Sets sets = nearest_sets(p_, leaning_, wished);
  if (std::find(starts_.begin(), starts_.end(), sets) == starts_.end()) starts_.push_back(std::move(sets));
}

Guide PriceDescent::guide() const {
  Guide out;
  const Layout& at = dual_.layout();
  const auto points = [&](std::size_t i) { return std::max(0.0, best_prices_[i]); };
  for (std::size_t s = 0; s < p_.sessions.size(); ++s) {
    out.credit.emplace_back();
    for (std::size_t f = 0; f < p_.families.size(); ++f)
      out.credit.back().push_back(points(at.credit + s * p_.families.size() + f));
  }
  for (std::size_t s = 0; s < p_.sessions.size(); ++s) {
    const Session& session = p_.sessions[s];
    const auto w = static_cast<std::size_t>(session.week);
    std::array<double, kLoads> load{};
    for (std::size_t l = 0; l < kLoads; ++l) {
      const double own = points(at.ceiling + s * kLoads + l) / std::max(1, session.ceiling[l]);
      load[l] = own + points(at.week_load + w * kLoads + l) / std::max(1, p_.weeks[w].ceiling[l]);
    }
    out.load.push_back(load);
  }
  return out;
}

}  // namespace lanework::block
