#include "core/plan/explain.h"

#include <algorithm>

#include "core/clock/clock.h"
#include "core/clock/saving.h"
#include "core/plan/availability.h"
#include "core/plan/infeasible.h"
#include "core/plan/keep_slot.h"

namespace lanework::plan {
namespace {

using catalogue::Drill;
using session::Bar;
using session::Change;
using session::ChangeKind;
using session::Reason;

constexpr int kNoCeiling = 1'000'000'000;
constexpr int kNoHurry = 7200;
constexpr std::array<int, 3> kPricedMinutes = {1, 3, 5};
// A longer session needs a larger margin: what covers a family is sought from the time at tonight's margin on, in
// steps of so many seconds.
constexpr int kSlotStepSeconds = 10;
constexpr int kMostSlotSteps = 30;

class Explainer {
 public:
  Explainer(Plan& plan, const catalogue::Catalogue& catalogue, const catalogue::Routine& routine,
            const session::Evening& evening, KernelWorkspace& workspace)
      : plan_(plan), catalogue_(catalogue), routine_(routine), evening_(evening), workspace_(workspace) {}

  void run() {
    find_changes();
    for (const FamilyDemand& family : plan_.problem.families) {
      if (family.required && !covered(plan_.solution, family)) {
        plan_.uncovered.push_back({family.family, cure(family)});
      }
    }
    const Objective& objective = plan_.solution.evaluation.objective;
    if (objective.uncovered + objective.shortfall + objective.changes == 0) return;
    for (const int minutes : kPricedMinutes) {
      std::vector<Gain> buys = bought_by(minutes);
      if (!buys.empty()) plan_.prices.push_back({minutes, std::move(buys)});
    }
  }

 private:
  Plan& plan_;
  const catalogue::Catalogue& catalogue_;
  const catalogue::Routine& routine_;
  const session::Evening& evening_;
  KernelWorkspace& workspace_;
  std::optional<Solution> unhurried_;  // with all the time in the world
  std::optional<Solution> unlimited_;  // without youth ceilings
  std::optional<session::NoTime> no_time_;

  [[nodiscard]] const Drill& drill_of(std::size_t i) const {
    return catalogue_.drills[static_cast<std::size_t>(plan_.problem.drills[i].drill)];
  }
  [[nodiscard]] static const Option* option_of(const Problem& problem, const Choice& choice, std::size_t i) {
    return choice[i] < 0 ? nullptr : &problem.drills[i].options[static_cast<std::size_t>(choice[i])];
  }
  [[nodiscard]] const catalogue::RoutineLine& line_of(std::size_t i) const {
    return routine_.lines[static_cast<std::size_t>(plan_.problem.drills[i].routine_line)];
  }

  [[nodiscard]] bool covered(const Solution& solution, const FamilyDemand& family) const {
    for (std::size_t i = 0; i < solution.choice.size(); ++i) {
      const int group = plan_.problem.drills[i].group;
      const bool of_family = std::find(family.groups.begin(), family.groups.end(), group) != family.groups.end();
      if (of_family && solution.choice[i] >= 0) return true;
    }
    return false;
  }

  void find_changes() {
    Problem problem = plan_.problem;
    problem.budget = kNoHurry;
    unhurried_ = solve(problem, workspace_);
    problem = plan_.problem;
    for (std::size_t l = 0; l < 3; ++l) problem.ceiling[l] = kNoCeiling;
    unlimited_ = solve(problem, workspace_);
    for (std::size_t i = 0; i < plan_.problem.drills.size(); ++i) {
      const Option* option = option_of(plan_.problem, plan_.solution.choice, i);
      if (plan_.problem.drills[i].routine_line >= 0) {
        add_routine_change(i, option);
      } else if (option != nullptr) {
        plan_.session.changes.push_back(
            {ChangeKind::kNewDrill, plan_.problem.drills[i].drill, 0, option->dose, why_new(i)});
      }
    }
  }

  void add_routine_change(std::size_t i, const Option* option) {
    const catalogue::RoutineLine& line = line_of(i);
    std::vector<Change>& changes = plan_.session.changes;
    if (option == nullptr) {
      changes.push_back({ChangeKind::kLeftOut, line.drill, line.dose, 0, why_changed(i)});
      return;
    }
    if (option->rung != line.rung) {
      const ChangeKind kind = option->rung < line.rung ? ChangeKind::kEasierRung : ChangeKind::kHarderRung;
      changes.push_back({kind, line.drill, line.rung, option->rung, why_rung(i, line.rung)});
    }
    if (option->dose != line.dose) {
      const ChangeKind kind = option->dose < line.dose ? ChangeKind::kSmallerDose : ChangeKind::kLargerDose;
      changes.push_back({kind, line.drill, line.dose, option->dose, why_changed(i)});
    }
  }

  // Does the drill keep the routine's rung and dose in another solution of the same drills?
  [[nodiscard]] bool as_routine(const std::optional<Solution>& solution, std::size_t i) const {
    if (!solution) return false;
    const Option* option = option_of(plan_.problem, solution->choice, i);
    return option != nullptr && option->rung == line_of(i).rung && option->dose == line_of(i).dose;
  }

  Reason why_rung(std::size_t i, int rung) {
    const std::optional<Bar> bar = barred_because(drill_of(i), rung, evening_);
    return bar ? Reason(*bar) : why_changed(i);
  }

  Reason why_changed(std::size_t i) {
    if (plan_.problem.drills[i].options.empty()) return why_closed(i);
    if (as_routine(unhurried_, i)) return no_time();
    if (as_routine(unlimited_, i)) return kept_ceiling(i);
    if (evening_.more_than_routine || evening_.free_composition) return session::MoreOfAnother{};
    return session::TimeAndCeilings{no_time()};
  }

  // A drill of the routine without a way of doing it. A harder rung that would be allowed is no way.
  [[nodiscard]] Bar why_closed(std::size_t i) const {
    std::optional<Bar> bar = barred_because(drill_of(i), evening_);
    if (!bar) bar = barred_because(drill_of(i), line_of(i).rung, evening_);
    return bar.value_or(session::NoneKeepsCeilings{});
  }

  session::NoTime no_time() {
    if (no_time_) return *no_time_;
    session::Session whole;
    for (const catalogue::RoutineLine& line : routine_.lines) {
      if (!barred_because(catalogue_.drills[static_cast<std::size_t>(line.drill)], line.rung, evening_)) {
        whole.items.push_back({line.drill, line.rung, line.dose, {}, {}, {}, {}});
      }
    }
    const std::vector<clock::SessionLine> lines = clock::session_lines(whole, catalogue_, evening_);
    const Seconds needed = clock::planned_time(lines) + clock::moment_margin(lines);
    if (needed > evening_.slot) {
      no_time_ = session::SlotTooShort{needed, evening_.slot, evening_.breaks.total()};
    } else {
      no_time_ = not_of_the_routine();
    }
    return *no_time_;
  }

  // The drills of this session that the routine does not have.
  [[nodiscard]] session::RoomFor not_of_the_routine() const {
    session::RoomFor out;
    for (std::size_t i = 0; i < plan_.problem.drills.size(); ++i) {
      if (plan_.problem.drills[i].routine_line >= 0 || plan_.solution.choice[i] < 0) continue;
      out.drills.push_back(plan_.problem.drills[i].drill);
    }
    return out;
  }

  [[nodiscard]] Reason kept_ceiling(std::size_t i) const {
    for (std::size_t l = 0; l < 3; ++l) {
      const bool has_load = std::any_of(plan_.problem.drills[i].options.begin(), plan_.problem.drills[i].options.end(),
                                        [&](const Option& o) { return o.loads[l] > 0; });
      if (!has_load || !plan_.solution.in_state[l]) continue;
      return session::KeepsCeiling{static_cast<Load>(l), plan_.problem.ceiling[l] / 1000, evening_.age, near_match()};
    }
    return session::KeepsCeilings{near_match()};
  }
  [[nodiscard]] std::optional<int> near_match() const {
    constexpr int kNear = 2;
    return evening_.days_to_match && *evening_.days_to_match <= kNear ? evening_.days_to_match : std::nullopt;
  }

  [[nodiscard]] Reason why_new(std::size_t i) const {
    const Drill& drill = drill_of(i);
    if (plan_.problem.drills[i].pinned) return session::Pinned{};
    for (std::size_t j = 0; j < plan_.problem.drills.size(); ++j) {
      const ProblemDrill& other = plan_.problem.drills[j];
      if (other.routine_line < 0 || !other.options.empty() || drill_of(j).family != drill.family) continue;
      return session::StandsIn{other.drill, why_closed(j)};
    }
    return session::Covers{drill.family};
  }

  // The first drill of the family, with its reason.
  [[nodiscard]] NoneCanBeDone none_can_be_done(catalogue::Family family) const {
    const auto first = std::find_if(catalogue_.drills.begin(), catalogue_.drills.end(),
                                    [&](const Drill& drill) { return drill.family == family; });
    if (first == catalogue_.drills.end()) return {-1, {}};
    return {static_cast<int>(first - catalogue_.drills.begin()), barred_because(*first, evening_)};
  }

  Cure cure(const FamilyDemand& family) {
    bool any_option = false;
    for (std::size_t i = 0; i < plan_.problem.drills.size(); ++i) {
      if (drill_of(i).family == family.family && !plan_.problem.drills[i].options.empty()) any_option = true;
    }
    if (!any_option) return none_can_be_done(family.family);
    const int budget = least_budget(plan_.problem, workspace_, [&](const Solution& s) { return covered(s, family); });
    if (budget < 0) return kept_out_by(family);
    int more = budget - plan_.problem.budget;
    for (int step = 0; step < kMostSlotSteps; ++step, more += kSlotStepSeconds) {
      const std::optional<Solution> longer = with_more(more);
      if (longer && covered(*longer, family)) return MoreTime{Seconds(more)};
    }
    return kept_out_by(family);
  }

  // The session of a slot so many seconds longer, with a margin of its own.
  std::optional<Solution> with_more(int seconds) {
    SlotSearch search =
        keep_slot(plan_.problem, evening_.slot + Seconds(seconds), plan_.margin, catalogue_, evening_, workspace_);
    if (!search.kept) return {};
    return std::move(search.kept->solution);
  }

  // What keeps a family out whatever the time.
  Cure kept_out_by(const FamilyDemand& family) {
    Problem problem = plan_.problem;
    problem.ceiling[static_cast<std::size_t>(Load::kNewDrills)] = kNoCeiling;
    const std::optional<Solution> any_new = solve(problem, workspace_);
    const int most = plan_.problem.ceiling[static_cast<std::size_t>(Load::kNewDrills)];
    if (any_new && covered(*any_new, family)) return NobodyWasTaught{most};
    return CeilingsOrPins{};
  }

  std::vector<Gain> bought_by(int minutes) {
    const std::optional<Solution> more = with_more(60 * minutes);
    if (!more) return {};
    std::vector<Gain> gains;
    for (const FamilyDemand& family : plan_.problem.families) {
      if (family.required && covered(*more, family) && !covered(plan_.solution, family)) {
        gains.push_back({family.family, -1, 0});
      }
    }
    for (std::size_t i = 0; i < plan_.problem.drills.size(); ++i) add_gain(gains, i, *more);
    return gains;
  }

  void add_gain(std::vector<Gain>& gains, std::size_t i, const Solution& more) const {
    if (plan_.problem.drills[i].routine_line < 0) return;
    const Option* now = option_of(plan_.problem, plan_.solution.choice, i);
    const Option* then = option_of(plan_.problem, more.choice, i);
    if (then == nullptr) return;
    const std::int64_t cost_now = now == nullptr ? plan_.problem.drills[i].left_out : now->changes;
    if (then->changes >= cost_now && !(now == nullptr)) return;
    gains.push_back({{}, plan_.problem.drills[i].drill, then->dose});
  }
};

}  // namespace

void explain(Plan& plan, const catalogue::Catalogue& catalogue, const catalogue::Routine& routine,
             const session::Evening& evening, KernelWorkspace& workspace) {
  Explainer(plan, catalogue, routine, evening, workspace).run();
}

}  // namespace lanework::plan
