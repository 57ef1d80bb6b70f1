// The families' side of one week, its set given: which doses, by what uses earn and credits and loads cost there.
// Credits are whole, and so is the load of one kind that the week's ceiling binds most: what comes in large pieces
// prices alone get wrong. Exact, in whole numbers.
//
// Work: drills x sessions x options x credits x parts of the ceiling.
#pragma once

#include <algorithm>
#include <cstdint>
#include <span>
#include <vector>

#include "core/block/problem.h"
#include "core/block/session_lister.h"

namespace lanework::block {

// Fine points.
struct WeekPrices {
  std::vector<std::int32_t> use;     // [session x members + member], of either sign: what a use earns
  std::vector<std::int32_t> credit;  // [session x families + family]: what a credit costs
  std::vector<std::int64_t> load;    // [session], 2^-kLoadShift a unit, of either sign: what the whole load earns
};

class WeekFamilies {
 public:
  explicit WeekFamilies(const Problem& problem);

  // members ascending.
  void begin(std::size_t week, std::span<const Session> sessions, std::span<const int> members);
  // The load whose ceiling is kept whole, or -1 where none can bind.
  [[nodiscard]] int whole_load() const { return whole_; }
  // What more credits of the family are worth in fine points, fixed ones included, by those of the week's sessions;
  // level once more are worth no more.
  [[nodiscard]] std::int64_t worth(std::size_t family, std::size_t credits) const {
    return worth_[family][std::min(credits, cap_[family])];
  }

  // The most that the week's uses are worth; SessionLister::kDoesNotFit where none goes these ways. choice: [session x
  // members + member] option or -1. ways: [session].
  std::int64_t solve(std::span<const Session> sessions, const std::vector<Ways>& ways, const WeekPrices& prices,
                     std::vector<int>& choice);

 private:
  // A member in a session, in the order of the family's table.
  struct Item {
    std::size_t session;
    std::size_t member;
    std::size_t place;  // session x members + member
  };
  struct FamilyTable {
    std::vector<Item> items;
    bool heavy = false;                            // some option has some of the whole load
    std::vector<std::vector<std::int32_t>> stage;  // after so many items: [credits x columns + parts]
    std::vector<std::int32_t> best;                // by parts
  };

  const Problem& p_;
  std::size_t week_ = 0;
  std::vector<int> members_;
  int whole_ = -1;
  int unit_ = 1;           // of the load, a part
  std::size_t parts_ = 0;  // of the ceiling
  std::vector<std::vector<std::int64_t>> worth_;
  std::vector<std::size_t> cap_;
  std::vector<FamilyTable> families_;
  std::vector<std::vector<std::int32_t>> together_;  // after so many heavy families: by parts

  void choose_whole_load(std::span<const Session> sessions);
  [[nodiscard]] int best_unit(std::span<const Session> sessions, int ceiling, int divisor) const;
  [[nodiscard]] const std::vector<Option>& options(const Session& session, std::size_t member) const;
  [[nodiscard]] std::size_t columns(const FamilyTable& table) const { return table.heavy ? parts_ + 1 : 1; }
  [[nodiscard]] std::size_t parts_of(const Option& option) const;
  [[nodiscard]] std::int32_t earning(const Item& item, std::size_t family, const Option& option,
                                     const WeekPrices& prices) const;
  void fill(std::size_t family, std::span<const Session> sessions, const std::vector<Ways>& ways,
            const WeekPrices& prices);
  void add_item(std::size_t family, std::size_t k, std::span<const Session> sessions, const std::vector<Ways>& ways,
                const WeekPrices& prices);
  void read(std::size_t family, std::size_t parts, std::span<const Session> sessions, const std::vector<Ways>& ways,
            const WeekPrices& prices, std::vector<int>& choice) const;
};

}  // namespace lanework::block
