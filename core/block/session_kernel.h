// One session at linear prices, exact: dynamic programming over the drills in canonical order, in whole
// numbers. State before a drill: steps left, formation of the last drill, whether the family of the current
// group is covered, and a flag for each family of two phases between them.
//
// Work: sum over drills with a price worth looking at of (options + 6) x steps; memory: 6 to 24 rows a drill.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "core/block/problem.h"

namespace lanework::block {

class SessionKernel {
 public:
  explicit SessionKernel(const Problem& problem);

  // Position of the first option of each drill among the prices of a kind.
  [[nodiscard]] const std::vector<int>& first_option(int kind) const {
    return first_option_[static_cast<std::size_t>(kind)];
  }
  // One price for each option of the session's kind, drill after drill. The most that a selection within the
  // clock is worth, uncovered families taken off; the selection goes to 'choice', one entry a drill.
  // REQUIRES: |price| < 2^22.
  std::int32_t solve(const Session& session, std::span<const std::int32_t> prices, std::span<int> choice);

 private:
  using Row = std::int32_t*;
  // Rows of one level: by flags, covered, formation.
  struct Level {
    std::array<Row, 24> rows{};
  };
  struct Live {
    int drill;
    int first;  // options in live_options_
    int last;
  };
  struct LiveOption {
    int option;
    int steps;
    std::int32_t price;
  };
  struct GroupPlan {
    int flags = 1;        // flag states inside the group
    bool counts = false;  // covered is kept
    int sets = -1;        // bit of the flag its end sets among those of the next group
    int reads = -1;       // bit of the flag its end reads among its own
  };

  const Problem& p_;
  std::vector<std::vector<int>> first_option_;  // by kind
  std::vector<GroupPlan> groups_;
  std::vector<int> group_first_;  // drills
  std::vector<int> group_last_;
  std::size_t pad_ = 0;
  std::size_t stride_ = 0;
  std::vector<std::int32_t> pool_;
  std::size_t rows_used_ = 0;
  std::vector<std::int32_t> take_;
  std::vector<Live> live_;
  std::vector<LiveOption> live_options_;
  std::vector<int> live_first_;  // by group, and one past the end
  std::vector<Level> levels_;    // one before each live drill, one after the last of each group
  int budget_ = 0;

  static std::size_t at(int flag, int covered, int form) {
    return static_cast<std::size_t>((flag * 2 + covered) * catalogue::kFormations + form);
  }
  void plan_groups();
  void find_live(const Session& session, std::span<const std::int32_t> prices);
  void add_live(const Kind& kind, std::size_t drill, std::span<const std::int32_t> prices, std::int32_t floor);
  void make_room();
  Row new_row();
  Level end_of_group(std::size_t g, const Level& next);
  void sweep_drill(const Kind& kind, std::size_t g, const Live& live, const Level& after, Level& before);
  void walk(const Kind& kind, int form, std::span<int> choice) const;
  [[nodiscard]] std::size_t level_of(std::size_t g, std::size_t k) const { return k + g; }
};

}  // namespace lanework::block
