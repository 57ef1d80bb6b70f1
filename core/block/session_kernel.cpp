#include "core/block/session_kernel.h"

#include <algorithm>
#include <cassert>

#include "core/block/value_rows.h"

namespace lanework::block {
namespace {

constexpr int kForms = catalogue::kFormations;

}  // namespace

SessionKernel::SessionKernel(const Problem& problem) : p_(problem) {
  int longest = 0;
  int slowest_change = 0;
  for (const Kind& kind : problem.kinds) {
    std::vector<int> first;
    int count = 0;
    for (const std::vector<Option>& options : kind.options) {
      first.push_back(count);
      count += static_cast<int>(options.size());
      for (const Option& option : options) longest = std::max(longest, option.steps);
    }
    first.push_back(count);
    first_option_.push_back(std::move(first));
    for (const auto& from : kind.change) {
      for (const int change : from) slowest_change = std::max(slowest_change, change);
    }
  }
  int budget = 0;
  for (const Session& session : problem.sessions) budget = std::max(budget, session.budget);
  // What shifts a row to the right reads the pad, which holds kNever.
  pad_ = static_cast<std::size_t>(std::max(longest, slowest_change) + 7) / 8 * 8;
  stride_ = pad_ + static_cast<std::size_t>(budget / 8 + 1) * 8;
  take_.assign(stride_, kNever);
  plan_groups();
}

void SessionKernel::plan_groups() {
  groups_.assign(p_.groups.size(), {});
  group_first_.assign(p_.groups.size(), 0);
  group_last_.assign(p_.groups.size(), 0);
  std::size_t position = 0;
  for (std::size_t g = 0; g < p_.groups.size(); ++g) {
    group_first_[g] = static_cast<int>(position);
    while (position < p_.drills.size() && p_.drills[position].group == static_cast<int>(g)) ++position;
    group_last_[g] = static_cast<int>(position);
  }
  assert(position == p_.drills.size());
  std::vector<int> alive;  // families whose flag is alive, by bit
  for (std::size_t g = 0; g < p_.groups.size(); ++g) {
    GroupPlan& plan = groups_[g];
    const int f = p_.groups[g].family;
    const Family& family = p_.families[static_cast<std::size_t>(f)];
    plan.flags = 1 << alive.size();
    plan.counts = family.required;
    if (!family.required || family.groups.size() < 2) continue;
    if (family.groups.front() == static_cast<int>(g)) {
      plan.sets = static_cast<int>(alive.size());
      alive.push_back(f);
    } else {
      const auto found = std::find(alive.begin(), alive.end(), f);
      plan.reads = static_cast<int>(found - alive.begin());
      alive.erase(found);
    }
  }
}

SessionKernel::Row SessionKernel::new_row() { return pool_.data() + stride_ * rows_used_++ + pad_; }

void SessionKernel::make_room() {
  std::size_t rows = 1;
  for (std::size_t g = 0; g < groups_.size(); ++g) {
    const std::size_t live = static_cast<std::size_t>(live_first_[g + 1] - live_first_[g]) + 1;
    rows += live * static_cast<std::size_t>(groups_[g].flags) * (groups_[g].counts ? 2 : 1) * kForms;
  }
  if (pool_.size() < rows * stride_) pool_.resize(rows * stride_, kNever);
  rows_used_ = 0;
}

void SessionKernel::add_live(const Kind& kind, std::size_t drill, std::span<const std::int32_t> prices,
                             std::int32_t floor) {
  const std::vector<Option>& options = kind.options[drill];
  const auto first = static_cast<int>(live_options_.size());
  for (std::size_t o = 0; o < options.size(); ++o) {
    const std::int32_t price = prices[o];
    if (price <= floor || options[o].steps > budget_) continue;
    live_options_.push_back({static_cast<int>(o), options[o].steps, price});
  }
  const auto last = static_cast<int>(live_options_.size());
  if (last > first) live_.push_back({static_cast<int>(drill), first, last});
}

// Drills that no best selection needs are left out: nothing is gained by one whose price is not above what
// covering its family is worth.
void SessionKernel::find_live(const Session& session, std::span<const std::int32_t> prices) {
  const Kind& kind = p_.kinds[static_cast<std::size_t>(session.kind)];
  const std::vector<int>& first = first_option(session.kind);
  budget_ = session.budget;
  live_.clear();
  live_options_.clear();
  live_first_.clear();
  const auto uncovered = static_cast<std::int32_t>(p_.uncovered * kFine);
  for (std::size_t g = 0; g < groups_.size(); ++g) {
    live_first_.push_back(static_cast<int>(live_.size()));
    const std::int32_t floor = groups_[g].counts ? -uncovered : 0;
    for (auto d = static_cast<std::size_t>(group_first_[g]); d < static_cast<std::size_t>(group_last_[g]); ++d) {
      const auto from = static_cast<std::size_t>(first[d]);
      add_live(kind, d, prices.subspan(from, static_cast<std::size_t>(first[d + 1]) - from), floor);
    }
  }
  live_first_.push_back(static_cast<int>(live_.size()));
}

// Where the end of a group takes nothing off, its rows are those of the next group's start.
SessionKernel::Level SessionKernel::end_of_group(std::size_t g, const Level& next) {
  const GroupPlan& plan = groups_[g];
  const auto uncovered = static_cast<std::int32_t>(p_.uncovered * kFine);
  Level end;
  for (int flag = 0; flag < plan.flags; ++flag) {
    for (int covered = 0; covered < (plan.counts ? 2 : 1); ++covered) {
      int flag_next = flag;
      bool lost = plan.counts && covered == 0;
      if (plan.sets >= 0) {
        flag_next |= covered << plan.sets;
        lost = false;
      } else if (plan.reads >= 0) {
        lost = lost && (flag & (1 << plan.reads)) == 0;
        const int low = flag & ((1 << plan.reads) - 1);
        flag_next = low | ((flag >> (plan.reads + 1)) << plan.reads);
      }
      for (int form = 0; form < kForms; ++form) {
        Row row = next.rows[at(flag_next, 0, form)];
        if (lost) {
          const Row less = new_row();
          shift_row(less, row, -uncovered, budget_ + 1);
          row = less;
        }
        end.rows[at(flag, covered, form)] = row;
      }
    }
  }
  return end;
}

void SessionKernel::sweep_drill(const Kind& kind, std::size_t g, const Live& live, const Level& after, Level& before) {
  const GroupPlan& plan = groups_[g];
  const int formation = static_cast<int>(p_.drills[static_cast<std::size_t>(live.drill)].formation);
  const int count = budget_ + 1;
  Row take = take_.data() + pad_;
  for (int flag = 0; flag < plan.flags; ++flag) {
    std::fill_n(take, count, kNever);
    const Row from = after.rows[at(flag, plan.counts ? 1 : 0, formation)];
    for (int o = live.first; o < live.last; ++o) {
      const LiveOption& option = live_options_[static_cast<std::size_t>(o)];
      raise_row(take, from - option.steps, option.price, count);
    }
    for (int covered = 0; covered < (plan.counts ? 2 : 1); ++covered) {
      for (int form = 0; form < kForms; ++form) {
        const int change = kind.change[static_cast<std::size_t>(form)][static_cast<std::size_t>(formation)];
        const Row row = new_row();
        merge_row(row, after.rows[at(flag, covered, form)], 0, take - change, count);
        before.rows[at(flag, covered, form)] = row;
      }
    }
  }
}

std::int32_t SessionKernel::solve(const Session& session, std::span<const std::int32_t> prices, std::span<int> choice) {
  std::fill(choice.begin(), choice.end(), -1);
  find_live(session, prices);
  make_room();
  const Kind& kind = p_.kinds[static_cast<std::size_t>(session.kind)];
  levels_.resize(live_.size() + groups_.size() + 1);
  const Row nothing = new_row();
  std::fill_n(nothing, budget_ + 1, 0);
  Level next;
  next.rows.fill(nothing);
  for (std::size_t g = groups_.size(); g-- > 0;) {
    const auto last = static_cast<std::size_t>(live_first_[g + 1]);
    levels_[level_of(g, last)] = end_of_group(g, next);
    for (std::size_t k = last; k-- > static_cast<std::size_t>(live_first_[g]);) {
      sweep_drill(kind, g, live_[k], levels_[level_of(g, k + 1)], levels_[level_of(g, k)]);
    }
    next = levels_[level_of(g, static_cast<std::size_t>(live_first_[g]))];
  }
  // The first drill is not walked to: the best formation to have started in is its own.
  int best = 0;
  for (int form = 1; form < kForms; ++form) {
    if (next.rows[at(0, 0, form)][budget_] > next.rows[at(0, 0, best)][budget_]) best = form;
  }
  walk(kind, best, choice);
  return next.rows[at(0, 0, best)][budget_];
}

void SessionKernel::walk(const Kind& kind, int form, std::span<int> choice) const {
  int flag = 0;
  int left = budget_;
  for (std::size_t g = 0; g < groups_.size(); ++g) {
    const GroupPlan& plan = groups_[g];
    int covered = 0;
    for (auto k = static_cast<std::size_t>(live_first_[g]); k < static_cast<std::size_t>(live_first_[g + 1]); ++k) {
      const Level& before = levels_[level_of(g, k)];
      const Level& after = levels_[level_of(g, k + 1)];
      const std::int32_t value = before.rows[at(flag, covered, form)][left];
      if (after.rows[at(flag, covered, form)][left] == value) continue;
      const auto drill = static_cast<std::size_t>(live_[k].drill);
      const int formation = static_cast<int>(p_.drills[drill].formation);
      const int change = kind.change[static_cast<std::size_t>(form)][static_cast<std::size_t>(formation)];
      const int covered_now = plan.counts ? 1 : 0;
      for (int o = live_[k].first; o < live_[k].last; ++o) {
        const LiveOption& option = live_options_[static_cast<std::size_t>(o)];
        const int then = left - change - option.steps;
        if (then < 0 || after.rows[at(flag, covered_now, formation)][then] + option.price != value) continue;
        choice[drill] = option.option;
        left = then;
        form = formation;
        covered = covered_now;
        break;
      }
    }
    if (plan.sets >= 0) {
      flag |= covered << plan.sets;
    } else if (plan.reads >= 0) {
      flag = (flag & ((1 << plan.reads) - 1)) | ((flag >> (plan.reads + 1)) << plan.reads);
    }
  }
}

}  // namespace lanework::block
