#include "core/plan/candidates.h"

#include <algorithm>
#include <array>
#include <numeric>

#include "core/plan/availability.h"
#include "core/plan/constants.h"

namespace lanework::plan {
namespace {

using catalogue::Catalogue;
using catalogue::Drill;
using catalogue::Routine;
using session::Evening;

class CandidateFinder {
 public:
  CandidateFinder(const Catalogue& catalogue, const Routine& routine, const Evening& evening)
      : catalogue_(catalogue), evening_(evening), line_of_(catalogue.drills.size(), -1) {
    for (std::size_t i = 0; i < routine.lines.size(); ++i) {
      line_of_[static_cast<std::size_t>(routine.lines[i].drill)] = static_cast<int>(i);
    }
    for (std::size_t d = 0; d < catalogue.drills.size(); ++d) {
      if (line_of_[d] >= 0) add_routine_drill(d, routine.lines[static_cast<std::size_t>(line_of_[d])]);
    }
    for (std::size_t d = 0; d < catalogue.drills.size(); ++d) {
      if (line_of_[d] < 0 && (evening.free_composition || stands_in(catalogue.drills[d]))) add_other(d);
    }
    for (const session::Pin& pin : evening.pins) apply_pin(pin);
    std::sort(found_.begin(), found_.end(), [](const Candidate& a, const Candidate& b) { return a.drill < b.drill; });
  }
  std::vector<Candidate> take() { return std::move(found_); }

 private:
  const Catalogue& catalogue_;
  const Evening& evening_;
  std::vector<int> line_of_;
  std::array<bool, catalogue::kFamilies> barred_{};   // a routine drill of the family is barred tonight
  std::array<bool, catalogue::kFamilies> present_{};  // a routine drill of the family can be done tonight
  std::vector<Candidate> found_;

  [[nodiscard]] std::vector<int> open_rungs(const Drill& drill, int most) const {
    std::vector<int> rungs;
    for (int r = 0; r <= most; ++r) {
      if (!barred_because(drill, r, evening_)) rungs.push_back(r);
    }
    return rungs;
  }
  static std::vector<int> first(int count) {
    std::vector<int> out(static_cast<std::size_t>(count));
    std::iota(out.begin(), out.end(), 0);
    return out;
  }
  static int last_rung(const Drill& drill) { return static_cast<int>(drill.rungs.size()) - 1; }
  static int all_doses(const Drill& drill) { return static_cast<int>(drill.dose.steps.size()); }

  void add_routine_drill(std::size_t d, const catalogue::RoutineLine& line) {
    const Drill& drill = catalogue_.drills[d];
    Candidate candidate;
    candidate.drill = static_cast<int>(d);
    candidate.routine_line = line_of_[d];
    candidate.rungs = open_rungs(drill, evening_.free_composition ? last_rung(drill) : line.rung);
    const bool larger = evening_.free_composition || evening_.more_than_routine;
    candidate.doses = first(larger ? all_doses(drill) : line.dose + 1);
    const auto family = static_cast<std::size_t>(drill.family);
    (candidate.rungs.empty() ? barred_ : present_)[family] = true;
    found_.push_back(std::move(candidate));
  }

  // A drill outside the routine enters where one of its family is barred tonight, or where the family is
  // required and no drill of the routine can cover it.
  [[nodiscard]] bool stands_in(const Drill& drill) const {
    const auto family = static_cast<std::size_t>(drill.family);
    return barred_[family] || (catalogue_.family(drill.family).required && !present_[family]);
  }

  void add_other(std::size_t d) {
    const Drill& drill = catalogue_.drills[d];
    if (new_eccentric_too_late(catalogue_, evening_, drill)) return;
    Candidate candidate;
    candidate.drill = static_cast<int>(d);
    const bool any_rung = evening_.free_composition || is_known(evening_, drill);
    candidate.rungs = open_rungs(drill, last_rung(drill));
    if (!any_rung && candidate.rungs.size() > 1)
      candidate.rungs.erase(candidate.rungs.begin() + 1, candidate.rungs.end());
    candidate.doses = first(all_doses(drill));
    if (!candidate.rungs.empty()) found_.push_back(std::move(candidate));
  }

  void apply_pin(const session::Pin& pin) {
    const Drill* drill = catalogue_.find(pin.drill);
    const int index = static_cast<int>(drill - catalogue_.drills.data());
    auto at = std::find_if(found_.begin(), found_.end(), [&](const Candidate& c) { return c.drill == index; });
    if (at == found_.end()) {
      found_.emplace_back();
      at = found_.end() - 1;
      at->drill = index;
      at->rungs = open_rungs(*drill, last_rung(*drill));
      at->doses = first(all_doses(*drill));
    }
    at->pinned = true;
    if (!pin.rung.empty()) {
      const int rung = catalogue::rung_index(*drill, pin.rung);
      at->rungs.clear();
      if (!barred_because(*drill, rung, evening_)) at->rungs = {rung};
    }
    if (at->routine_line < 0 && new_eccentric_too_late(catalogue_, evening_, *drill)) at->rungs.clear();
    if (pin.sets > 0) at->doses = {catalogue::dose_index(*drill, pin.sets, pin.amount)};
  }
};

}  // namespace

bool has_done(const Evening& evening, const Drill& drill) {
  const auto found = evening.exposures.find(drill.id);
  return found != evening.exposures.end() && found->second.times > 0;
}

bool is_known(const Evening& evening, const Drill& drill) {
  const auto found = evening.exposures.find(drill.id);
  return found != evening.exposures.end() && found->second.times >= kTimesUntilKnown;
}

bool new_eccentric_too_late(const Catalogue& catalogue, const Evening& evening, const Drill& drill) {
  if (drill.loads.eccentric_thousandths == 0 || has_done(evening, drill)) return false;
  return catalogue::match_distance(catalogue.limits, evening.days_to_match).eccentric_percent < 100;
}

std::vector<Candidate> find_candidates(const Catalogue& catalogue, const Routine& routine, const Evening& evening) {
  return CandidateFinder(catalogue, routine, evening).take();
}

}  // namespace lanework::plan
