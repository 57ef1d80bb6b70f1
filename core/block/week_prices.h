// Where each kind of price of a week stands in one flat vector, where prices start, and how far they move.
#pragma once

#include <cstddef>
#include <vector>

#include "core/block/problem.h"

namespace lanework::block {

// Points; those of loads are points a ceiling.
using Prices = std::vector<double>;

struct WeekLayout {
  std::size_t sessions = 0;
  std::size_t members = 0;  // of the set
  std::size_t families = 0;

  // Of either sign: what a use costs the session and earns the family, and likewise the load that is kept whole.
  [[nodiscard]] std::size_t at_use(std::size_t i, std::size_t m) const { return i * members + m; }
  [[nodiscard]] std::size_t at_whole(std::size_t i) const { return sessions * members + i; }
  // Never below 0 from here on: what a credit earns the session and costs the family; loads.
  [[nodiscard]] std::size_t at_credit(std::size_t i, std::size_t f) const {
    return at_whole(sessions) + i * families + f;
  }
  [[nodiscard]] std::size_t at_week_load(std::size_t l) const { return at_credit(sessions, l); }
  [[nodiscard]] std::size_t at_ceiling(std::size_t i, std::size_t l) const {
    return at_week_load(kLoads) + kLoads * i + l;
  }
  [[nodiscard]] std::size_t count() const { return at_ceiling(sessions, 0); }

  // By price, how far it moves for a like share of its range.
  [[nodiscard]] Prices scales() const;
};

// The best prices of a week, kept for other sets: those of uses by drill.
class KnownPrices {
 public:
  void forget() { uses_.clear(); }
  void keep(const WeekLayout& layout, const Problem& problem, const std::vector<int>& members, const Prices& prices);
  // Those, or where none are known first ones.
  [[nodiscard]] Prices start(const WeekLayout& layout, const Problem& problem, const std::vector<int>& members) const;

 private:
  Prices uses_;    // [session x drills + drill]
  Prices others_;  // from at_whole(0) on
};

}  // namespace lanework::block
