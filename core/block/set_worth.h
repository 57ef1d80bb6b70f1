// What a spell is worth with its set given: its weeks, each on its own and exact, weeks that are alike once.
#pragma once

#include <cstdint>
#include <map>
#include <utility>
#include <vector>

#include "core/block/nearest_set.h"
#include "core/block/open_part.h"
#include "core/block/problem.h"
#include "core/block/week_solver.h"

namespace lanework::block {

struct SpellWorth {
  Points value = 0;             // where no limit on new drills and no close session of another week stands in the way
  std::int64_t bound_fine = 0;  // no choice with this set is worth more
};

class SetWorth {
 public:
  explicit SetWorth(const Problem& problem);

  // What swaps cost is not in it. Worked out again only where more effort than before may still change something.
  SpellWorth of(std::size_t spell, const std::vector<char>& set, const WeekEffort& effort);
  // An upper bound after so many rounds of prices, fine points.
  std::int64_t bound(std::size_t spell, const std::vector<char>& set, int rounds);
  // The plan with these sets, week after week: what was new is known the week after, and a session close to a hard one
  // of the week before is light.
  Plan plan_of(const Sets& sets, const WeekEffort& effort);

 private:
  const Problem& p_;
  WeekSolver weeks_;
  std::vector<std::size_t> alike_;
  std::vector<std::vector<std::size_t>> weeks_of_;  // by spell
  struct Known {
    WeekAnswer answer;
    int splits;  // of the effort it was worked out with
  };
  std::map<std::pair<std::size_t, std::vector<char>>, Known> known_;  // by week and set, all drills known
  std::vector<char> all_;

  const WeekAnswer& week(std::size_t w, const std::vector<char>& set, const WeekEffort& effort);
  bool keeps_new_limits(std::size_t w, const WeekAnswer& answer, std::vector<char>& done) const;
  [[nodiscard]] bool is_hard_choice(std::size_t session, const std::vector<int>& choice) const;
  [[nodiscard]] bool first_must_be_light(std::size_t w, const Plan& plan) const;
};

}  // namespace lanework::block
