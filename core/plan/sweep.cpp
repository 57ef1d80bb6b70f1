#include "core/plan/sweep.h"

#include <algorithm>

namespace lanework::plan {
namespace {

constexpr std::size_t kForms = catalogue::kFormations;

// Parts of a state are small counts: credits are capped at 40, flags are two bits.
std::uint8_t small(std::size_t count) { return static_cast<std::uint8_t>(count); }

// The widest vectors the processor has: whole numbers in doubles, so every width gives the same.
#if defined(__x86_64__) && defined(__GNUC__) && !defined(__clang__) && !defined(__SANITIZE_ADDRESS__) && \
    !defined(__SANITIZE_THREAD__)
#define LANEWORK_WIDEST __attribute__((target_clones("avx2", "default")))
#else
#define LANEWORK_WIDEST
#endif

using Taken = Sweep::Taken;

// to[t] = from[t - shift] + cost, for t = first .. last; kForbidden before 'shift'.
LANEWORK_WIDEST void take_row(double* __restrict to, const Taken& one, int first, int last) {
  int t = first;
  for (; t < one.shift && t <= last; ++t) to[t] = kForbidden;
  const double* __restrict from = one.from;
  const int shift = one.shift;
  const double cost = one.cost;
  for (; t <= last; ++t) to[t] = from[t - shift] + cost;
}

// to[t] = least of to[t] and from[t - shift] + cost, for t = first .. last, first >= shift.
LANEWORK_WIDEST void relax_row(double* __restrict to, const double* __restrict from, int shift, double cost, int first,
                               int last) {
  for (int t = first; t <= last; ++t) {
    const double candidate = from[t - shift] + cost;
    to[t] = candidate < to[t] ? candidate : to[t];
  }
}

// The same for two at once, so that the row goes through memory once.
LANEWORK_WIDEST void relax_row_twice(double* __restrict to, const Taken& a, const Taken& b, int first, int last) {
  const double* from_a = a.from;
  const double* from_b = b.from;
  const int shift_a = a.shift;
  const int shift_b = b.shift;
  const double cost_a = a.cost;
  const double cost_b = b.cost;
  for (int t = first; t <= last; ++t) {
    const double one = from_a[t - shift_a] + cost_a;
    const double other = from_b[t - shift_b] + cost_b;
    const double lesser = one < other ? one : other;
    to[t] = lesser < to[t] ? lesser : to[t];
  }
}

// to[t] = from[t] + cost, for t = first .. last.
LANEWORK_WIDEST void add_row(double* __restrict to, const double* __restrict from, double cost, int first, int last) {
  for (int t = first; t <= last; ++t) to[t] = from[t] + cost;
}

// to[t] = least of skip[t] + cost and take[t - shift], for t = first .. last; before 'shift' only the former.
LANEWORK_WIDEST void merge_row(double* __restrict to, const double* __restrict skip, double cost,
                               const double* __restrict take, int shift, int first, int last) {
  int t = first;
  for (; t < shift && t <= last; ++t) to[t] = skip[t] + cost;
  for (; t <= last; ++t) {
    const double left_out = skip[t] + cost;
    const double taken = take[t - shift];
    to[t] = taken < left_out ? taken : left_out;
  }
}

// The same where 'to' is the row that skips.
LANEWORK_WIDEST void merge_into_row(double* __restrict to, double cost, const double* __restrict take, int shift,
                                    int first, int last) {
  int t = first;
  for (; t < shift && t <= last; ++t) to[t] += cost;
  for (; t <= last; ++t) {
    const double left_out = to[t] + cost;
    const double taken = take[t - shift];
    to[t] = taken < left_out ? taken : left_out;
  }
}

}  // namespace

Sweep::Sweep(const KernelProblem& problem, KernelWorkspace& workspace)
    : p_(problem), w_(workspace), row_(static_cast<std::size_t>(problem.budget) + 1) {
  if (problem.most_new >= 0) fresh_ = static_cast<std::size_t>(problem.most_new) + 1;
  find_alive_flags();
  find_boundaries();
  find_windows();
  find_useful_options();
}

// An option is never the best where another of its drill is no slower, no dearer at these prices, gives no less
// credit and is no newer; of two equal ones the earlier stays, as the walk takes it.
void Sweep::find_useful_options() {
  const auto beaten = [](const KernelOption& a, const KernelOption& b, bool b_is_later) {
    constexpr auto kNew = static_cast<std::size_t>(Load::kNewDrills);
    if (a.seconds > b.seconds || a.credits < b.credits || a.loads[kNew] > b.loads[kNew]) return false;
    return b_is_later ? a.priced <= b.priced : a.priced < b.priced;
  };
  first_useful_.clear();
  for (const KernelDrill& drill : p_.drills) {
    first_useful_.push_back(useful_.size());
    for (const KernelOption& option : drill.options) {
      const bool idle = std::any_of(drill.options.begin(), drill.options.end(), [&](const KernelOption& other) {
        return &other != &option && beaten(other, option, &option > &other);
      });
      if (!idle) useful_.push_back(&option);
    }
  }
  first_useful_.push_back(useful_.size());
}

// Less time than this has not been used before a drill, and more than that makes no difference from it on.
void Sweep::find_windows() {
  const std::size_t count = p_.drills.size();
  longest_.assign(count, 0);
  slowest_change_.assign(count, 0);
  for (std::size_t i = 0; i < count; ++i) {
    const KernelDrill& drill = p_.drills[i];
    const auto formation = static_cast<std::size_t>(drill.formation);
    for (const auto& from : p_.change) slowest_change_[i] = std::max(slowest_change_[i], from[formation]);
    for (const KernelOption& option : drill.options) longest_[i] = std::max(longest_[i], option.seconds);
    longest_[i] = std::min(p_.budget, longest_[i] + slowest_change_[i]);
  }
  window_.assign(count + 1, {0, 0});
  for (std::size_t i = count; i-- > 0;) window_[i].last = std::min(p_.budget, window_[i + 1].last + longest_[i]);
  int left = p_.budget;
  for (std::size_t i = 0; i <= count; ++i) {
    window_[i].first = std::min(left, window_[i].last);
    if (i < count) left = std::max(0, left - longest_[i]);
  }
}

void Sweep::find_alive_flags() {
  const std::size_t count = p_.groups.size() + 1;
  alive_.assign(count, {-1, -1});
  flags_.assign(count, 1);
  for (int flag = 0; flag < 2; ++flag) {
    bool alive = false;
    for (std::size_t g = 0; g < count; ++g) {
      if (alive) {
        alive_[g][alive_[g][0] < 0 ? 0 : 1] = flag;
        flags_[g] *= 2;
      }
      if (g + 1 == count) break;
      if (p_.groups[g].sets_flag == flag) alive = true;
      if (p_.groups[g].reads_flag == flag) alive = false;
    }
  }
}

// The bit of a flag inside a flag state of boundary g; 0 when it is not alive there.
std::size_t Sweep::bit(std::size_t g, int flag) const {
  if (flag < 0) return 0;
  if (alive_[g][0] == flag) return 1;
  return alive_[g][1] == flag ? 2 : 0;
}

std::size_t Sweep::flag_after(std::size_t g, std::size_t flag, bool covered) const {
  std::size_t out = 0;
  for (int f = 0; f < 2; ++f) {
    const std::size_t after = bit(g + 1, f);
    if (after == 0) continue;
    const bool set = p_.groups[g].sets_flag == f ? covered : (flag & bit(g, f)) != 0;
    if (set) out |= after;
  }
  return out;
}

void Sweep::find_boundaries() {
  boundary_offset_.assign(p_.groups.size() + 2, 0);
  for (std::size_t g = 0; g <= p_.groups.size(); ++g)
    boundary_offset_[g + 1] = boundary_offset_[g] + flags_[g] * fresh_ * kForms;
  const std::size_t need = boundary_offset_.back() * row_;
  if (w_.boundary.size() < need) w_.boundary.resize(need);
  if (w_.take.size() < row_) w_.take.resize(row_);
}

double* Sweep::boundary_row(std::size_t g, const State& state) {
  const std::size_t row = (state.flag * fresh_ + state.fresh) * kForms + state.form;
  return w_.boundary.data() + (boundary_offset_[g] + row) * row_;
}

double* Sweep::inside_row(std::size_t k, const State& state) {
  return w_.inside.data() + (inside_offset_[k] + state_index(0, k, state)) * row_;
}
const double* Sweep::inside_row(std::size_t k, const State& state) const {
  return w_.inside.data() + (inside_offset_[k] + state_index(0, k, state)) * row_;
}

template <class What>
void Sweep::for_each_state(std::size_t k, const What& what) {
  for (std::size_t flag = first_flag_; flag <= last_flag_; ++flag) {
    for (std::size_t fresh = first_fresh_; fresh < fresh_; ++fresh) {
      for (std::size_t credits = 0; credits <= credits_before_[k]; ++credits) {
        what(State{small(flag), small(fresh), small(credits)});
      }
    }
  }
}

double Sweep::end_cost(std::size_t g, std::size_t flag, std::size_t credits) const {
  const KernelGroup& group = p_.groups[g];
  double cost = group.reached_cost[credits];
  const bool covered_before = group.reads_flag >= 0 && (flag & bit(g, group.reads_flag)) != 0;
  if (credits == 0 && !covered_before) cost += group.empty_cost;
  return cost;
}

double Sweep::solve() {
  const std::size_t groups = p_.groups.size();
  start_.assign(groups + 1, kForbidden);  // nothing taken at all is no session
  std::fill_n(boundary_row(groups, {}), flags_[groups] * fresh_ * kForms * row_, 0.0);
  in_place_ = true;
  for (std::size_t g = groups; g-- > 0;) {
    sweep_group(g);
    start_[g] = start_inside_[0];
  }
  in_place_ = false;
  return start_[0];
}

void Sweep::sweep_group(std::size_t g) {
  first_flag_ = 0;
  last_flag_ = flags_[g] - 1;
  first_fresh_ = 0;
  limit_ = p_.budget;
  sweep_inside(g, 0);
}

void Sweep::sweep_group_part(std::size_t g, const Part& part) {
  first_flag_ = part.first_flag;
  last_flag_ = part.last_flag;
  first_fresh_ = part.first_fresh;
  limit_ = part.most;
  sweep_inside(g, part.least);
}

// At the start of the group no less than 'least' seconds are left.
void Sweep::sweep_inside(std::size_t g, int least) {
  const std::size_t n = drills_in(g);
  first_.assign(n + 1, 0);
  for (std::size_t k = 0; k <= n; ++k) {
    first_[k] = std::max(window_[drill_of(g, k)].first, least);
    if (k < n) least -= longest_[drill_of(g, k)];
  }
  lay_out_inside(g);
  start_inside_.assign(n + 1, kForbidden);
  sweep_end(g, n);
  for (std::size_t k = n; k-- > 0;) sweep_drill(g, k);
}

void Sweep::lay_out_inside(std::size_t g) {
  const std::size_t n = drills_in(g);
  credits_before_.assign(n + 1, 0);
  int sum = 0;
  for (std::size_t k = 0; k <= n; ++k) {
    credits_before_[k] = std::min(cap_of(g), static_cast<std::size_t>(sum));
    if (k == n) break;
    int most = 0;
    for (const KernelOption& option : p_.drills[drill_of(g, k)].options) most = std::max(most, option.credits);
    sum += most;
  }
  inside_offset_.assign(n + 2, 0);
  credits_stride_.assign(n + 1, credits_before_[n] + 1);
  if (!in_place_) {
    for (std::size_t k = 0; k <= n; ++k) {
      credits_stride_[k] = credits_before_[k] + 1;
      inside_offset_[k + 1] = inside_offset_[k] + flags_[g] * fresh_ * credits_stride_[k] * kForms;
    }
  }
  const std::size_t rows = in_place_ ? flags_[g] * fresh_ * credits_stride_[n] * kForms : inside_offset_.back();
  if (w_.inside.size() < rows * row_) w_.inside.resize(rows * row_);
}

void Sweep::sweep_end(std::size_t g, std::size_t n) {
  const bool to_boundary = in_place_ && n == 0;
  const int last = in_place_ && n > 0 ? std::min(limit_, window_[drill_of(g, n) - 1].last) : limit_;
  for_each_state(n, [&](State state) {
    const double cost = end_cost(g, state.flag, state.credits);
    State next = next_group(g, state);
    for (state.form = 0; state.form < kForms; ++state.form) {
      next.form = state.form;
      double* to = to_boundary ? boundary_row(g, state) : inside_row(n, state);
      add_row(to, boundary_row(g + 1, next), cost, first_[n], last);
    }
  });
  start_inside_[n] = start_[g + 1] + end_cost(g, 0, 0);
}

void Sweep::sweep_drill(std::size_t g, std::size_t k) {
  const KernelDrill& drill = p_.drills[drill_of(g, k)];
  start_inside_[k] = start_before(g, k, drill);  // reads rows that are overwritten in place
  taken_before_.clear();
  for_each_state(k, [&](const State& state) { sweep_state(g, k, drill, state); });
}

// In place rows are there to the end of the drill's window only; from the end of the next one's on they are level.
double Sweep::start_before(std::size_t g, std::size_t k, const KernelDrill& drill) const {
  const int end = in_place_ ? window_[drill_of(g, k)].last : limit_;
  double start = drill.must ? kForbidden : start_inside_[k + 1] + drill.skip_cost;
  for (const KernelOption& option : drill.options) {
    if (too_new({}, option)) continue;
    const int time = std::min(limit_ - option.seconds, end);
    start = std::min(start, value(g, k + 1, taken(g, k, {}, option), time) + option.priced);
  }
  return start;
}

// In place this is right because states come by rising credits and new drills: what taking an option leads to has not
// been overwritten, or is the row that is read into 'take' first. The rows before the first drill are the boundary's.
void Sweep::sweep_state(std::size_t g, std::size_t k, const KernelDrill& drill, State state) {
  const int first = first_[k];
  // Beyond the window nothing changes; it starts no later than where it ends.
  const int last = std::min(std::max(window_[drill_of(g, k)].last, first), limit_);
  const bool to_boundary = in_place_ && k == 0;
  const int wanted = in_place_ && k > 0 ? std::min(limit_, window_[drill_of(g, k - 1)].last) : limit_;
  double* take = w_.take.data();
  const int first_take = std::max(0, first - slowest_change_[drill_of(g, k)]);
  options_taken_.clear();
  const std::size_t d = drill_of(g, k);
  for (std::size_t i = first_useful_[d]; i < first_useful_[d + 1]; ++i) {
    const KernelOption& option = *useful_[i];
    if (too_new(state, option)) continue;
    options_taken_.push_back({inside_row(k + 1, taken(g, k, state, option)), option.seconds, option.priced});
  }
  // Near the cap, states of other credits lead to the same rows.
  if (options_taken_.empty() || options_taken_ != taken_before_) take_best(take, first_take, last);
  taken_before_ = options_taken_;
  const auto formation = static_cast<std::size_t>(drill.formation);
  const double skip_cost = drill.must ? kForbidden : drill.skip_cost;
  for (std::size_t form = 0; form < kForms; ++form) {
    state.form = small(form);
    double* to = to_boundary ? boundary_row(g, state) : inside_row(k, state);
    const int change = p_.change[form][formation];
    if (in_place_ && !to_boundary) {
      merge_into_row(to, skip_cost, take, change, first, last);
    } else {
      merge_row(to, inside_row(k + 1, state), skip_cost, take, change, first, last);
    }
    std::fill(to + last + 1, to + wanted + 1, to[last]);
  }
}

// The best of the options for every time left, two options at a time.
void Sweep::take_best(double* take, int first, int last) const {
  const std::size_t count = options_taken_.size();
  if (count == 0) {
    for (int t = first; t <= last; ++t) take[t] = kForbidden;
    return;
  }
  take_row(take, options_taken_[0], first, last);
  for (std::size_t o = 1; o < count; o += 2) {
    const Taken& a = options_taken_[o];
    if (o + 1 == count) {
      relax_row(take, a.from, a.shift, a.cost, std::max(first, a.shift), last);
      break;
    }
    const Taken& b = options_taken_[o + 1];
    const int both = std::max({first, a.shift, b.shift});
    const Taken& shorter = a.shift < b.shift ? a : b;
    relax_row(take, shorter.from, shorter.shift, shorter.cost, std::max(first, shorter.shift),
              std::min(last, both - 1));
    relax_row_twice(take, a, b, both, last);
  }
}

bool Sweep::too_new(const State& state, const KernelOption& option) const {
  return p_.most_new >= 0 &&
         static_cast<int>(state.fresh) + option.loads[static_cast<std::size_t>(Load::kNewDrills)] > p_.most_new;
}

double Sweep::value(std::size_t /*g*/, std::size_t k, const State& state, int time) const {
  if (time < 0) return kForbidden;
  if (!state.started) return start_inside_[k];
  return inside_row(k, state)[time];
}

Sweep::State Sweep::taken(std::size_t g, std::size_t k, const State& state, const KernelOption& option) const {
  State after = state;
  after.credits = small(std::min(cap_of(g), state.credits + static_cast<std::size_t>(option.credits)));
  if (p_.most_new >= 0) {
    const int is_new = option.loads[static_cast<std::size_t>(Load::kNewDrills)];
    after.fresh = small(state.fresh + static_cast<std::size_t>(is_new));
  }
  after.form = small(static_cast<std::size_t>(p_.drills[drill_of(g, k)].formation));
  after.started = true;
  return after;
}

int Sweep::change_to(std::size_t g, std::size_t k, const State& state) const {
  if (!state.started) return 0;
  return p_.change[state.form][static_cast<std::size_t>(p_.drills[drill_of(g, k)].formation)];
}

Sweep::State Sweep::next_group(std::size_t g, const State& state) const {
  State next = state;
  next.flag = small(flag_after(g, state.flag, state.credits > 0));
  next.credits = 0;
  return next;
}

std::size_t Sweep::state_index(std::size_t /*g*/, std::size_t k, const State& state) const {
  return ((state.flag * fresh_ + state.fresh) * credits_stride_[k] + state.credits) * kForms + state.form;
}

KernelAnswer Sweep::read_out() {
  KernelAnswer answer;
  answer.value = start_[0];
  answer.options.assign(p_.drills.size(), -1);
  State state;
  int time = p_.budget;
  for (std::size_t g = 0; g < p_.groups.size(); ++g) {
    sweep_group_part(g, {state.flag, state.flag, state.fresh, time, time});
    for (std::size_t k = 0; k < drills_in(g); ++k) {
      const KernelDrill& drill = p_.drills[drill_of(g, k)];
      const double best = value(g, k, state, time);
      const int before = time - change_to(g, k, state);
      for (const KernelOption& option : drill.options) {
        if (too_new(state, option)) continue;
        const State after = taken(g, k, state, option);
        // Exact equality: the same whole numbers were added in the same order.
        if (value(g, k + 1, after, before - option.seconds) + option.priced != best) continue;
        answer.options[drill_of(g, k)] = option.option;
        time = before - option.seconds;
        state = after;
        break;
      }
    }
    state = next_group(g, state);
  }
  return answer;
}

}  // namespace lanework::plan
