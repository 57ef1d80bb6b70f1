// A plan with its value and everything its constraints read, kept up to date move by move.
#pragma once

#include <vector>

#include "core/block/problem.h"

namespace lanework::block {

class RunningSums {
 public:
  RunningSums(const Problem& problem, const Plan& plan);

  [[nodiscard]] const Plan& plan() const { return plan_; }
  [[nodiscard]] Points value() const { return value_; }
  // By how much constraints are broken, each in its own coarse unit; 0: the plan is feasible.
  [[nodiscard]] std::int64_t broken() const { return broken_; }
  [[nodiscard]] int option(std::size_t s, std::size_t d) const { return plan_.choice[s][d]; }
  [[nodiscard]] int credits(std::size_t week, std::size_t family) const { return credits_[week][family]; }
  [[nodiscard]] int week_load(std::size_t week, std::size_t load) const { return week_loads_[week][load]; }
  [[nodiscard]] int session_load(std::size_t s, std::size_t load) const { return sessions_[s].loads[load]; }
  // Is a session less than 48 h away hard?
  [[nodiscard]] bool hard_nearby(std::size_t s) const;
  [[nodiscard]] bool member(std::size_t p, std::size_t d) const { return plan_.sets[p][d] != 0; }
  // The drills of a spell's set, ascending.
  [[nodiscard]] const std::vector<int>& members(std::size_t p) const { return members_[p]; }
  [[nodiscard]] const std::vector<int>& sessions_of(std::size_t p) const { return spell_sessions_[p]; }

  // Sets the option of a drill in a session, -1: not used. REQUIRES: a member, or -1.
  void set_option(std::size_t s, std::size_t d, int option);
  // Lets a drill in or out of a spell's set. REQUIRES: out only where no session of the spell uses it.
  void set_member(std::size_t p, std::size_t d, bool in);

 private:
  struct Sums {
    int steps = 0;
    Loads loads{};
    int first_uses = 0;
  };

  const Problem* p_;
  Plan plan_;
  Points value_ = 0;
  std::int64_t broken_ = 0;
  std::vector<Sums> sessions_;
  std::vector<std::vector<int>> taken_;     // by session: drills used, ascending
  std::vector<std::vector<int>> covering_;  // [session][family]: drills used
  std::vector<std::vector<int>> credits_;   // [week][family]
  std::vector<Loads> week_loads_;
  std::vector<int> week_first_uses_;
  std::vector<std::vector<int>> members_;
  std::vector<std::vector<int>> spell_sessions_;
  std::vector<std::vector<int>> family_size_;  // [spell][family]
  std::vector<int> in_;
  std::vector<std::vector<int>> close_of_;
  std::vector<int> first_use_;  // by drill, of those never done; -1: none

  [[nodiscard]] std::int64_t session_broken(std::size_t s) const;
  [[nodiscard]] std::int64_t week_broken(std::size_t w) const;
  [[nodiscard]] std::int64_t pairs_broken(std::size_t s) const;
  [[nodiscard]] std::int64_t set_broken(std::size_t p) const;
  [[nodiscard]] std::size_t family_of(std::size_t d) const;
  [[nodiscard]] const Kind& kind_of(std::size_t s) const;
  void change_steps(std::size_t s, std::size_t d, int by_option, bool adding);
  void move_first_use(std::size_t d);
  void count_swap(std::size_t p, std::size_t d, int sign);
};

}  // namespace lanework::block
