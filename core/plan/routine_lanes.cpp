#include "core/plan/routine_lanes.h"

#include <algorithm>

#include "core/catalogue/loads.h"
#include "core/plan/build_problem.h"

namespace lanework::plan {
namespace {

using catalogue::Catalogue;
using catalogue::Drill;
using catalogue::LoadSum;
using catalogue::Routine;
using session::Change;
using session::ChangeKind;

constexpr Millimetres kLongestStrip{60'000};  // docs/formats/squad.md
constexpr Seconds kNoHurry{7200};

const Drill& drill_of(const Catalogue& catalogue, const catalogue::RoutineLine& line) {
  return catalogue.drills[static_cast<std::size_t>(line.drill)];
}

// The youth ceiling that a routine passes on a lane, if any.
std::optional<LaneCeiling> passed(const Catalogue& catalogue, const Routine& routine, Millimetres lane) {
  LoadSum sum;
  for (const catalogue::RoutineLine& line : routine.lines) {
    const Drill& drill = drill_of(catalogue, line);
    sum += catalogue::load_of(drill, drill.rungs[static_cast<std::size_t>(line.rung)],
                              drill.dose.steps[static_cast<std::size_t>(line.dose)], lane, catalogue.limits);
  }
  const catalogue::Ceilings& band = catalogue.ceilings_for(routine.age_from);
  if (sum.contacts > 1000 * band.contacts_session) return LaneCeiling{Load::kContacts, band.contacts_session, {}};
  if (sum.eccentric > 1000 * band.eccentric_session) return LaneCeiling{Load::kEccentric, band.eccentric_session, {}};
  if (sum.hard_running > 1000 * band.hard_running_session) {
    return LaneCeiling{Load::kHardRunning, band.hard_running_session, {}};
  }
  return {};
}

// An evening on which nothing but the lane and the ceilings can change a routine.
session::Evening plain_evening(const Routine& routine, Millimetres lane) {
  constexpr int kPlayers = 12;
  constexpr int kPlenty = 100;
  session::Evening evening;
  evening.slot = kNoHurry;
  evening.turnout = kPlayers;
  evening.age = routine.age_from;
  evening.strip.lane_length = lane;
  evening.strip.cone_spacing = lane;
  evening.strip.lanes = 2;
  evening.strip.area_width = catalogue::kUsualLane;
  evening.strip.area_length = catalogue::kUsualLane;
  evening.strip.wall = evening.strip.soft_ground = evening.strip.line = true;
  evening.kit = {kPlenty, kPlenty, kPlenty};
  return evening;
}

// Every single departure from the routine, evaluated; the cheapest that keep the ceilings.
class FirstChanges {
 public:
  FirstChanges(const Problem& problem, const Routine& routine) : problem_(problem), routine_(routine) {}

  std::vector<Change> find() {
    Choice choice;
    for (const ProblemDrill& drill : problem_.drills) choice.push_back(as_written(drill));
    for (std::size_t i = 0; i < problem_.drills.size(); ++i) {
      const int written = choice[i];
      for (int o = -1; o < static_cast<int>(problem_.drills[i].options.size()); ++o) {
        if (o == written) continue;
        choice[i] = o;
        consider(i, o, evaluate(problem_, choice));
      }
      choice[i] = written;
    }
    return std::move(changes_);
  }

 private:
  const Problem& problem_;
  const Routine& routine_;
  std::int64_t least_ = kUncoveredUnit * kUncoveredRange;
  std::vector<Change> changes_;

  [[nodiscard]] const catalogue::RoutineLine& line_of(const ProblemDrill& drill) const {
    return routine_.lines[static_cast<std::size_t>(drill.routine_line)];
  }
  [[nodiscard]] int as_written(const ProblemDrill& drill) const {
    const auto written = std::find_if(drill.options.begin(), drill.options.end(), [&](const Option& option) {
      return drill.routine_line >= 0 && option.rung == line_of(drill).rung && option.dose == line_of(drill).dose;
    });
    return written == drill.options.end() ? -1 : static_cast<int>(written - drill.options.begin());
  }

  void consider(std::size_t i, int option, const Evaluation& evaluation) {
    const ProblemDrill& drill = problem_.drills[i];
    if (!evaluation.feasible || drill.routine_line < 0) return;
    const std::int64_t cost = packed(evaluation.objective);
    if (cost > least_) return;
    if (cost < least_) changes_.clear();
    least_ = cost;
    changes_.push_back(change(line_of(drill), option < 0 ? nullptr : &drill.options[static_cast<std::size_t>(option)]));
  }

  // A drill changed in rung and dose at once is never cheapest: half of it would do.
  static Change change(const catalogue::RoutineLine& line, const Option* option) {
    if (option == nullptr) return {ChangeKind::kLeftOut, line.drill, line.dose, 0, {}};
    if (option->rung != line.rung) return {ChangeKind::kEasierRung, line.drill, line.rung, option->rung, {}};
    return {ChangeKind::kSmallerDose, line.drill, line.dose, option->dose, {}};
  }
};

}  // namespace

RoutineLanes routine_lanes(const Catalogue& catalogue, const Routine& routine) {
  RoutineLanes out;
  out.age = routine.age_from;
  for (const catalogue::RoutineLine& line : routine.lines) {
    const Drill& drill = drill_of(catalogue, line);
    if (drill.formation != catalogue::Formation::kLane || drill.lane.least_lane <= out.shortest) continue;
    out.shortest = drill.lane.least_lane;
    out.needs_shortest = line.drill;
  }
  out.longest = kLongestStrip;
  if (!passed(catalogue, routine, kLongestStrip)) return out;
  // Loads never fall as the lane grows, and a checked routine keeps the ceilings on the usual lane.
  Millimetres keeps = catalogue::kUsualLane;
  Millimetres passes = kLongestStrip;
  while (passes - keeps > Millimetres(1)) {
    const Millimetres middle((keeps.count + passes.count) / 2);
    (passed(catalogue, routine, middle) ? passes : keeps) = middle;
  }
  out.longest = keeps;
  out.above = passed(catalogue, routine, passes);
  if (out.shortest > passes) return out;  // then it stands on no lane at all
  const session::Evening evening = plain_evening(routine, passes);
  out.above->first_changes = FirstChanges(build_problem(catalogue, routine, evening, kNoHurry), routine).find();
  return out;
}

}  // namespace lanework::plan
