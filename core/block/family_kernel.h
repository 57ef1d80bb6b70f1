// One family over the whole block at prices, exact: which of its drills are of the set in each spell, in which
// sessions each is used, and how many credits each session gets of it. The weeks' targets and what a swap costs
// are inside, so that no mixture of half-used drills is cheaper than whole ones.
//
// Work: subsets of the family's drills x weeks x credits + subsets squared x spells.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "core/block/problem.h"

namespace lanework::block {

// What the family side pays for its sets, in fine points, by spell.
struct SetPrices {
  std::vector<std::int32_t> comes_in;  // besides Problem::swap; may be negative
};

// What is settled about the sets: drills that must be of a spell's set, or may not; bits in the order of
// FamilyKernel::drills, by spell.
struct SettledDrills {
  std::vector<std::uint32_t> in;
  std::vector<std::uint32_t> out;
};

struct FamilyPattern {
  std::int64_t value = 0;
  std::vector<std::uint32_t> members;    // by spell: bits in the order of FamilyKernel::drills
  std::vector<std::vector<int>> option;  // [session][drill of the family]: position of the option, or -1
};

class FamilyKernel {
 public:
  // times: by week, how many weeks alike it stands for.
  FamilyKernel(const Problem& problem, int family, std::vector<int> times);

  // Drills of the family, by position in the problem.
  [[nodiscard]] const std::vector<int>& drills() const { return drills_; }
  // earns: what using each drill in each session is worth, [session][drill of the problem]; pays: what a credit
  // costs in each session. Fine points, |earns| <= 2^20, 0 <= pays. False: what is settled leaves no sets.
  bool solve(std::span<const std::int32_t> earns, std::span<const std::int32_t> pays, const SetPrices& prices,
             const SettledDrills& settled, FamilyPattern& out);

 private:
  struct Subset {
    std::uint32_t bits;
    int parent;  // without its last drill; -1: the empty one
    int last;    // its last drill
    int size;
  };
  using Row = std::vector<std::int32_t>;  // by credits, capped

  const Problem& p_;
  std::size_t family_;
  std::vector<int> times_;
  std::vector<int> drills_;
  std::vector<Subset> subsets_;
  std::vector<std::vector<int>> week_sessions_;
  std::size_t credits_ = 0;                       // entries of a row
  std::vector<Row> worth_;                        // by week
  std::vector<Row> alone_;                        // by drill: the week's best by credits, while a week is worked on
  std::vector<Row> together_;                     // by subset
  std::vector<std::int32_t> sum_;                 // scratch of a sum of two rows
  std::vector<std::vector<std::int64_t>> spell_;  // [spell][subset]
  std::vector<std::vector<int>> from_;            // [spell][subset]: the subset before

  std::vector<int> wholes_;                // subsets of the size that a set has of the family
  std::vector<std::vector<int>> allowed_;  // [spell]: those that agree with what is settled
  std::vector<char> wanted_;               // by subset: part of an allowed one
  std::vector<int> order_;                 // allowed ones by the value of the spell before

  void list_subsets();
  bool find_allowed(const SettledDrills& settled);
  void sort_by_value(std::size_t spell);
  [[nodiscard]] const std::vector<Option>& options(int session, std::size_t drill) const;
  void week_of_drill(std::size_t w, std::size_t drill, std::span<const std::int32_t> earns,
                     std::span<const std::int32_t> pays, Row& out) const;
  void add_rows(const Row& a, const Row& b, Row& out);
  void sweep_week(std::size_t w, std::span<const std::int32_t> earns, std::span<const std::int32_t> pays);
  void join_spells(const SetPrices& prices, FamilyPattern& out);
  void read_week(std::size_t w, int subset, std::span<const std::int32_t> earns, std::span<const std::int32_t> pays,
                 FamilyPattern& out);
  void read_drill(std::size_t w, std::size_t drill, std::size_t credits, std::span<const std::int32_t> earns,
                  std::span<const std::int32_t> pays, FamilyPattern& out);
};

}  // namespace lanework::block
