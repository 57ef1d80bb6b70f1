// A bound on what any sets are worth, lowered by settling drills in or out of a set: each settled part has prices of
// its own, and what it can still be worth. Work is counted in rounds of prices.
#pragma once

#include <algorithm>
#include <cstdint>
#include <functional>
#include <vector>

#include "core/block/bundle.h"
#include "core/block/dual.h"
#include "core/block/nearest_set.h"
#include "core/block/open_part.h"

namespace lanework::block {

class Branching {
 public:
  // spell: the open one, the last; the sets of those before it are given with each part.
  Branching(const Problem& problem, int spell);

  // Another part: the open spell as a whole after these sets, at most so many rounds. before_fine: what the spells
  // before are worth at the most.
  void open(const Sets& before, std::int64_t before_fine, int rounds);
  // What is left beside all parts is worth this at the most.
  void leave(std::int64_t bound_fine) { closed_ = std::max(closed_, bound_fine); }
  // The part that can still be worth most is split, at most so many rounds for each half. False: nothing is open that
  // could be worth more than 'known' points.
  bool split(int rounds, Points known);

  // No sets are worth more, fine points; swaps are paid for.
  [[nodiscard]] std::int64_t bound_fine() const;
  [[nodiscard]] int rounds() const { return rounds_; }
  // Sets that the part last looked at wishes for, made to keep every limit.
  [[nodiscard]] const Sets& wished() const { return wished_; }
  // Sets that are the only ones left in a part, to be worked out: the answer is what the block is worth with them at
  // the most.
  std::function<std::int64_t(const Sets&)> worth_at_most;

 private:
  // What one look at prices told: the bound lies above this line wherever the choice that it comes from may be made.
  struct Look {
    double at_zero = 0;
    std::vector<float> slope;
    std::vector<std::uint32_t> members;  // [family], of the open spell's set: bits in the order of FamilyKernel::drills
    std::vector<char> used;              // by drill, by any session
  };
  struct Part {
    SettledSets settled;
    std::int64_t before = 0;
    std::vector<double> prices;
    double step = 0;
    std::int64_t bound = 0;
    std::vector<double> leaning;  // of the open spell
    std::vector<Look> looks;      // those that balance each other at its prices
  };
  const Problem& p_;
  std::size_t spell_;
  OpenPart open_;
  Dual dual_;
  std::vector<double> last_prices_;  // of the part last opened: a start for the next
  std::vector<Part> parts_;          // open ones
  std::int64_t closed_ = INT64_MIN;  // the most of those that nothing is left to split in
  Sets wished_;
  int rounds_ = 0;

  [[nodiscard]] std::size_t family_of(std::size_t d) const;
  bool settle_what_follows(SettledSets& settled) const;
  bool settle_family(std::vector<Settled>& spell, std::size_t f, bool& changed) const;
  bool settle_swaps(std::vector<Settled>& spell, const std::vector<char>& before, int most, bool& changed) const;
  [[nodiscard]] std::vector<char> set_before(const SettledSets& settled) const;
  void look_at(Part part, int rounds);
  [[nodiscard]] static double value_at(const Look& look, const std::vector<double>& prices);
  std::vector<Look> hand_on(Part& part, double points, Bundle& bundle) const;
  [[nodiscard]] bool still_holds(const Look& look, const SettledSets& settled) const;
  [[nodiscard]] Look look_of(const DualPoint& point, double at_zero) const;
  void lean(std::vector<Look> looks, const Bundle& bundle, Part& part) const;
  void wish(const Part& part);
  [[nodiscard]] std::size_t most_doubtful(const Part& part) const;
  [[nodiscard]] bool only_sets(const Part& part, Sets& sets) const;
};

}  // namespace lanework::block
