#include "core/plan/build_problem.h"

#include <algorithm>
#include <cassert>
#include <cstdlib>

#include "core/catalogue/loads.h"
#include "core/clock/clock.h"
#include "core/plan/candidates.h"
#include "core/plan/constants.h"
#include "core/plan/credits.h"

namespace lanework::plan {
namespace {

using catalogue::Catalogue;
using catalogue::Drill;
using catalogue::Routine;
using session::Evening;

// Shortfall is kept in quarters of a weight, so that a weight can be moved by a quarter of itself.
constexpr std::int64_t kShortfallScale = 4;

class ProblemBuilder {
 public:
  ProblemBuilder(const Catalogue& catalogue, const Routine& routine, const Evening& evening)
      : catalogue_(catalogue), routine_(routine), evening_(evening) {}

  Problem build(Seconds budget) {
    problem_.gathering = static_cast<int>(rounded_up(clock::gathering(evening_)).count);
    problem_.breaks = static_cast<int>(evening_.breaks.total().count);
    problem_.budget = static_cast<int>(budget.count) - problem_.gathering - problem_.breaks;
    set_changes();
    set_ceilings();
    set_groups();
    for (const Candidate& candidate : find_candidates(catalogue_, routine_, evening_)) add_drill(candidate);
    sort_drills();
    set_targets();
    return std::move(problem_);
  }

 private:
  const Catalogue& catalogue_;
  const Routine& routine_;
  const Evening& evening_;
  Problem problem_;

  void set_changes() {
    for (int from = 0; from < catalogue::kFormations; ++from) {
      for (int to = 0; to < catalogue::kFormations; ++to) {
        const Milliseconds change = clock::formation_change(static_cast<catalogue::Formation>(from),
                                                            static_cast<catalogue::Formation>(to), evening_);
        problem_.change[static_cast<std::size_t>(from)][static_cast<std::size_t>(to)] =
            static_cast<int>(rounded_up(change).count);
      }
    }
  }

  void set_ceilings() {
    const catalogue::Ceilings& band = catalogue_.ceilings_for(evening_.age);
    const catalogue::MatchDistance match = catalogue::match_distance(catalogue_.limits, evening_.days_to_match);
    const int new_drills = match.new_drills ? catalogue_.limits.most_new_drills : 0;
    // Thousandths, as load_of gives them: 1000 a unit times percent over 100.
    problem_.ceiling = {static_cast<int>(band.contacts_session * 10 * match.contacts_percent),
                        static_cast<int>(band.eccentric_session * 10 * match.eccentric_percent),
                        static_cast<int>(band.hard_running_session * 10 * match.hard_running_percent), new_drills};
  }

  void set_groups() {
    for (const catalogue::FamilyRow& family : catalogue_.families) {
      for (const catalogue::Phase phase : family.phases) {
        problem_.groups.push_back({family.family, phase, 0, family.weight * kShortfallScale});
      }
    }
    // Inside a phase families stand as the routine has them first; those it lacks follow by rank.
    std::sort(problem_.groups.begin(), problem_.groups.end(), [&](const Group& a, const Group& b) {
      if (a.phase != b.phase) return a.phase < b.phase;
      return place_in_phase(a) < place_in_phase(b);
    });
    for (const catalogue::FamilyRow& family : catalogue_.families) {
      FamilyDemand demand{family.family, family.required, {}};
      for (std::size_t g = 0; g < problem_.groups.size(); ++g) {
        if (problem_.groups[g].family == family.family) demand.groups.push_back(static_cast<int>(g));
      }
      problem_.families.push_back(std::move(demand));
    }
  }

  [[nodiscard]] int place_in_phase(const Group& group) const {
    for (std::size_t i = 0; i < routine_.lines.size(); ++i) {
      const Drill& drill = catalogue_.drills[static_cast<std::size_t>(routine_.lines[i].drill)];
      if (drill.family == group.family && drill.phase == group.phase) return static_cast<int>(i);
    }
    return static_cast<int>(routine_.lines.size()) + catalogue_.family(group.family).rank;
  }

  [[nodiscard]] int group_of(const Drill& drill) const {
    for (std::size_t g = 0; g < problem_.groups.size(); ++g) {
      if (problem_.groups[g].family == drill.family && problem_.groups[g].phase == drill.phase)
        return static_cast<int>(g);
    }
    assert(false);  // a checked catalogue has a group for every drill
    return 0;
  }

  void add_drill(const Candidate& candidate) {
    const Drill& drill = catalogue_.drills[static_cast<std::size_t>(candidate.drill)];
    ProblemDrill out;
    out.drill = candidate.drill;
    out.group = group_of(drill);
    out.formation = drill.formation;
    out.pinned = candidate.pinned;
    out.routine_line = candidate.routine_line;
    out.left_out = candidate.routine_line >= 0 ? evening_.weights.left_out : 0;
    for (const int rung : candidate.rungs) {
      for (const int dose : candidate.doses) out.options.push_back(option_of(candidate, drill, rung, dose));
    }
    problem_.drills.push_back(std::move(out));
  }

  [[nodiscard]] int times_done(const Drill& drill) const {
    const auto found = evening_.exposures.find(drill.id);
    return found == evening_.exposures.end() ? 0 : found->second.times;
  }

  [[nodiscard]] Option option_of(const Candidate& candidate, const Drill& drill, int rung, int dose) const {
    const catalogue::DoseStep& step = drill.dose.steps[static_cast<std::size_t>(dose)];
    const auto load = catalogue::load_of(drill, drill.rungs[static_cast<std::size_t>(rung)], step,
                                         evening_.strip.lane_length, catalogue_.limits);
    Option option;
    option.rung = rung;
    option.dose = dose;
    option.seconds =
        static_cast<int>(rounded_up(clock::drill_time(catalogue_, drill, rung, dose, evening_).total()).count);
    option.credits = credits_of(drill, step, catalogue_.family(drill.family), evening_.age);
    option.loads = {static_cast<int>(load.contacts), static_cast<int>(load.eccentric),
                    static_cast<int>(load.hard_running), 0};
    const int times = times_done(drill);
    if (candidate.routine_line >= 0) {
      const catalogue::RoutineLine& line = routine_.lines[static_cast<std::size_t>(candidate.routine_line)];
      option.changes = std::abs(line.dose - dose) * evening_.weights.dose_step +
                       std::abs(line.rung - rung) * evening_.weights.rung_step;
    } else {
      option.loads[static_cast<std::size_t>(Load::kNewDrills)] = times == 0 ? 1 : 0;
      option.changes = evening_.weights.new_drill;
      // The more familiar, then the smaller dose; a harder rung of something not of the routine last.
      option.preference = (times == 0 ? kNeverDone : times < kTimesUntilKnown ? kNotYetKnown : 0) + dose + rung;
    }
    return option;
  }

  void sort_drills() {
    std::stable_sort(problem_.drills.begin(), problem_.drills.end(), [&](const ProblemDrill& a, const ProblemDrill& b) {
      if (a.group != b.group) return a.group < b.group;
      const bool a_routine = a.routine_line >= 0;
      const bool b_routine = b.routine_line >= 0;
      if (a_routine != b_routine) return a_routine;
      if (a_routine && a.routine_line != b.routine_line) return a.routine_line < b.routine_line;
      return catalogue_.drills[static_cast<std::size_t>(a.drill)].id <
             catalogue_.drills[static_cast<std::size_t>(b.drill)].id;
    });
  }

  // The routine's own doses are the targets; where the lead asks for more, at least a full session's dose.
  void set_targets() {
    for (const catalogue::RoutineLine& line : routine_.lines) {
      const Drill& drill = catalogue_.drills[static_cast<std::size_t>(line.drill)];
      problem_.groups[static_cast<std::size_t>(group_of(drill))].target += credits_of(
          drill, drill.dose.steps[static_cast<std::size_t>(line.dose)], catalogue_.family(drill.family), evening_.age);
    }
    for (Group& group : problem_.groups) {
      constexpr int kFullDose = 4;
      if (evening_.more_than_routine && group.target > 0) group.target = std::max(group.target, kFullDose);
      group.target = std::min(group.target, kMostCredits);
    }
  }
};

}  // namespace

Problem build_problem(const Catalogue& catalogue, const Routine& routine, const Evening& evening, Seconds budget) {
  return ProblemBuilder(catalogue, routine, evening).build(budget);
}

}  // namespace lanework::plan
