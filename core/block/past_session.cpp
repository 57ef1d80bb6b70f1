#include "core/block/past_session.h"

#include <algorithm>

#include "core/catalogue/loads.h"
#include "core/clock/clock.h"
#include "core/plan/credits.h"

namespace lanework::block {
namespace {

int steps_of(std::int64_t seconds) { return static_cast<int>((seconds + kStepSeconds / 2) / kStepSeconds); }

class Aftermath {
 public:
  Aftermath(const catalogue::Catalogue& catalogue, const session::Evening& evening)
      : catalogue_(catalogue), evening_(evening) {}

  PastSession of(const std::vector<PlannedItem>& planned, const Report& report) {
    PastSession out;
    out.report = report;
    for (const PlannedItem& item : planned) out.items.push_back({item, false, false});
    if (report.happened != Report::Happened::kMissed) mark(out);
    count(out);
    return out;
  }

 private:
  const catalogue::Catalogue& catalogue_;
  const session::Evening& evening_;

  // In order until the minutes are up: the drill that was begun has used its loads and given nothing.
  void mark(PastSession& out) const {
    const Report& report = out.report;
    const bool told = report.happened != Report::Happened::kNoWord;
    const bool whole = report.happened == Report::Happened::kHeld && !report.minutes;
    const std::int64_t seconds = 60 * std::int64_t{report.minutes.value_or(0)};
    std::int64_t clock = rounded_up(clock::gathering(evening_)).count;
    int before = -1;
    for (PastItem& item : out.items) {
      const auto& left_out = report.left_out;
      if (std::find(left_out.begin(), left_out.end(), item.planned.drill) != left_out.end()) continue;
      if (whole || !report.minutes) {
        item.used = true;
        item.done = whole;
        continue;
      }
      const int formation = static_cast<int>(drill_of(item).formation);
      if (before >= 0) clock += kStepSeconds * change_steps(before, formation);
      before = formation;
      item.used = told && clock < seconds;
      clock += std::int64_t{kStepSeconds} * item_steps(item);
      item.done = told && clock <= seconds;
    }
  }

  void count(PastSession& out) const {
    out.promised.assign(catalogue_.families.size(), 0);
    out.given.assign(catalogue_.families.size(), 0);
    for (const PastItem& item : out.items) {
      const catalogue::Drill& drill = drill_of(item);
      const catalogue::DoseStep& step = drill.dose.steps[static_cast<std::size_t>(item.planned.dose)];
      const auto family = static_cast<std::size_t>(drill.family);
      const int credits = plan::credits_of(drill, step, catalogue_.family(drill.family), evening_.age);
      out.promised[family] += credits;
      if (item.done) out.given[family] += credits;
      if (!item.used) continue;
      const catalogue::LoadSum load =
          catalogue::load_of(drill, drill.rungs[static_cast<std::size_t>(item.planned.rung)], step,
                             evening_.strip.lane_length, catalogue_.limits);
      out.used[0] += static_cast<int>(load.contacts);
      out.used[1] += static_cast<int>(load.eccentric);
      out.used[2] += static_cast<int>(load.hard_running);
    }
    for (int& given : out.given) given = given * out.report.quarters / kMostDidIt;
  }

  [[nodiscard]] const catalogue::Drill& drill_of(const PastItem& item) const {
    return catalogue_.drills[static_cast<std::size_t>(item.planned.drill)];
  }
  [[nodiscard]] int change_steps(int from, int to) const {
    return steps_of(rounded_up(clock::formation_change(static_cast<catalogue::Formation>(from),
                                                       static_cast<catalogue::Formation>(to), evening_))
                        .count);
  }
  [[nodiscard]] int item_steps(const PastItem& item) const {
    if (item.planned.steps > 0) return item.planned.steps;
    const clock::DrillTime time =
        clock::drill_time(catalogue_, drill_of(item), item.planned.rung, item.planned.dose, evening_);
    return std::max(1, steps_of(rounded_up(time.total()).count));
  }
};

}  // namespace

PastSession past_session(const catalogue::Catalogue& catalogue, const session::Evening& evening, std::size_t index,
                         const std::vector<PlannedItem>& planned, const Report& report) {
  PastSession out = Aftermath(catalogue, evening).of(planned, report);
  out.evening = index;
  return out;
}

}  // namespace lanework::block
