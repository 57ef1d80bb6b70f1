// Better and better prices for the bound: a subgradient method with Polyak's steps and a deflected direction.
// Work is counted in rounds.
#pragma once

#include <cstdint>
#include <vector>

#include "core/block/dual.h"
#include "core/block/nearest_sets.h"
#include "core/block/search.h"

namespace lanework::block {

class PriceDescent {
 public:
  explicit PriceDescent(const Problem& problem);
  // From the prices of the whole problem on, for one that is restricted to some of its drills: drill_of names them.
  PriceDescent(const Problem& restricted, const PriceDescent& whole, const std::vector<std::size_t>& drill_of);

  // Goes on for so many rounds; 'value' is that of the best plan known, 0: none.
  void descend(int rounds, Points value);

  [[nodiscard]] std::int64_t bound_fine() const { return bound_; }
  [[nodiscard]] const std::vector<double>& prices() const { return best_prices_; }
  [[nodiscard]] int rounds() const { return rounds_; }
  [[nodiscard]] Guide guide() const;
  // Different sets that the families wished for on the way, made to keep size and swaps.
  [[nodiscard]] const std::vector<Sets>& starts() const { return starts_; }

 private:
  const Problem& p_;
  Dual dual_;
  std::vector<double> scale_;
  std::vector<double> prices_;
  std::vector<double> best_prices_;
  std::vector<double> direction_;
  DualPoint point_;
  Leaning leaning_;
  std::vector<Sets> starts_;
  std::int64_t bound_ = INT64_MAX;
  int rounds_ = 0;
  int since_better_ = 0;
  double step_ = 1;

  void set_scales();
  void set_first_prices();
  bool note_bound();
  void move_prices(Points value);
  void lean();
  void wish_sets();
};

}  // namespace lanework::block
