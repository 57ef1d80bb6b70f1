// The sweep: values of every state, from the last group back to the first, and the walk forward that reads
// an optimal session off them. Inside a group the values are kept only while the group is being worked on;
// the walk computes them again.
#pragma once

#include <array>
#include <cstddef>
#include <vector>

#include "core/plan/kernel.h"

namespace lanework::plan {

// Far above every value and finite, so that adding costs to it stays well defined.
inline constexpr double kForbidden = 1e30;
inline bool forbidden(double value) { return value >= kForbidden / 2; }

class Sweep {
 public:
  // State before the k-th drill of a group. started is false while nothing has been taken: then flag,
  // credits and form are 0 and no change is paid.
  struct State {
    std::uint8_t flag = 0;
    std::uint8_t fresh = 0;  // new drills taken, where the problem keeps them in the state
    std::uint8_t credits = 0;
    std::uint8_t form = 0;
    bool started = false;
  };

  // One option seen from the row of the state it leads to.
  struct Taken {
    const double* from;
    int shift;
    double cost;
    bool operator==(const Taken&) const = default;
  };

  // Both must outlive the sweep.
  Sweep(const KernelProblem& problem, KernelWorkspace& workspace);

  // Least priced value of a whole session; forbidden() when there is none.
  double solve();
  // REQUIRES: solve() gave a value that is not forbidden.
  KernelAnswer read_out();

  // Flag states, new drills taken at the least, and seconds left, at the start of a group.
  struct Part {
    std::size_t first_flag;
    std::size_t last_flag;
    std::size_t first_fresh;
    int least;
    int most;
  };
  // Computes the values inside group g for what can be reached from there. REQUIRES: solve().
  void sweep_group_part(std::size_t g, const Part& part);
  // Least priced value from the k-th drill of the group last swept to the end, with 'time' seconds left.
  [[nodiscard]] double value(std::size_t g, std::size_t k, const State& state, int time) const;
  // Would the option be one new drill too many?
  [[nodiscard]] bool too_new(const State& state, const KernelOption& option) const;
  // The state after taking an option of the k-th drill. REQUIRES: it is not too new.
  [[nodiscard]] State taken(std::size_t g, std::size_t k, const State& state, const KernelOption& option) const;
  // Seconds to change formation for the k-th drill.
  [[nodiscard]] int change_to(std::size_t g, std::size_t k, const State& state) const;
  // The state at the start of the next group.
  [[nodiscard]] State next_group(std::size_t g, const State& state) const;
  // Cost of ending the group in this state.
  [[nodiscard]] double end_cost(std::size_t g, std::size_t flag, std::size_t credits) const;

  [[nodiscard]] std::size_t drills_in(std::size_t g) const {
    return static_cast<std::size_t>(p_.groups[g].last - p_.groups[g].first);
  }
  [[nodiscard]] std::size_t drill_of(std::size_t g, std::size_t k) const {
    return static_cast<std::size_t>(p_.groups[g].first) + k;
  }
  // A state's position among those before the k-th drill (started ones only).
  [[nodiscard]] std::size_t state_index(std::size_t g, std::size_t k, const State& state) const;

 private:
  const KernelProblem& p_;
  KernelWorkspace& w_;
  struct Window {  // of seconds left before a drill: values before it are not used, after it they are equal
    int first;
    int last;
  };
  std::vector<Window> window_;
  std::vector<int> longest_;                 // seconds that each drill takes at the most, change included
  std::vector<int> first_;                   // the same group: where the window before its k-th drill starts
  std::vector<const KernelOption*> useful_;  // of all drills: options that can be the best at these prices
  std::vector<std::size_t> first_useful_;    // of each drill among them, and their number
  std::vector<Taken> options_taken_;
  std::vector<Taken> taken_before_;           // of the same drill's state before, that the row 'take' stands for
  std::vector<int> slowest_change_;           // to each drill
  std::size_t row_;                           // doubles in a row: one a second of time left
  std::vector<std::array<int, 2>> alive_;     // for each boundary the flags alive, or -1
  std::vector<std::size_t> flags_;            // for each boundary the number of flag states
  std::vector<std::size_t> boundary_offset_;  // in rows
  std::vector<std::size_t> inside_offset_;    // in rows, for the group swept last
  std::vector<std::size_t> credits_before_;   // for the same group: most credits before its k-th drill
  std::vector<std::size_t> credits_stride_;   // and how many states of credits its rows have room for
  bool in_place_ = false;                     // rows of a drill overwrite those of the next: only the last are wanted
  std::size_t fresh_ = 1;                     // states of new drills taken
  std::size_t first_flag_ = 0;                // flag states, new drills and seconds that are being swept
  std::size_t last_flag_ = 0;
  std::size_t first_fresh_ = 0;
  int limit_ = 0;
  std::vector<double> start_;         // value at a boundary with nothing taken so far
  std::vector<double> start_inside_;  // the same inside the group swept last

  void find_alive_flags();
  void find_boundaries();
  void find_windows();
  void find_useful_options();
  void take_best(double* take, int first, int last) const;
  [[nodiscard]] std::size_t bit(std::size_t g, int flag) const;
  [[nodiscard]] std::size_t cap_of(std::size_t g) const { return p_.groups[g].reached_cost.size() - 1; }
  [[nodiscard]] std::size_t flag_after(std::size_t g, std::size_t flag, bool covered) const;
  double* boundary_row(std::size_t g, const State& state);
  double* inside_row(std::size_t k, const State& state);
  [[nodiscard]] const double* inside_row(std::size_t k, const State& state) const;
  // Calls what for every state of flag, new drills and credits before the k-th drill that is being swept.
  template <class What>
  void for_each_state(std::size_t k, const What& what);
  void sweep_group(std::size_t g);
  void sweep_inside(std::size_t g, int least);
  void lay_out_inside(std::size_t g);
  [[nodiscard]] double start_before(std::size_t g, std::size_t k, const KernelDrill& drill) const;
  void sweep_end(std::size_t g, std::size_t n);
  void sweep_drill(std::size_t g, std::size_t k);
  void sweep_state(std::size_t g, std::size_t k, const KernelDrill& drill, State state);
};

}  // namespace lanework::plan
