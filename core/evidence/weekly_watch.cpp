#include "core/evidence/weekly_watch.h"

#include <algorithm>
#include <cmath>

#include "core/evidence/cusum.h"

namespace lanework::evidence {
namespace {

bool watches_more(const WatchPlan& plan) { return plan.changed_rate > plan.usual_rate; }

// In parts.
int reference_of(const WatchPlan& plan, double hours) {
  const double share = reference_value(plan.usual_rate, plan.changed_rate);
  return static_cast<int>(std::lround(plan.parts * share * hours));
}

std::int64_t after_week(const WatchPlan& plan, std::int64_t sum, std::int64_t events, int reference) {
  const std::int64_t change = std::int64_t{plan.parts} * events - reference;
  return std::max<std::int64_t>(0, sum + (watches_more(plan) ? change : -change));
}

}  // namespace

std::vector<WatchedWeek> watch_weeks(const WatchPlan& plan, std::span<const Counted> weeks) {
  std::vector<WatchedWeek> out;
  std::int64_t sum = 0;
  for (const Counted& week : weeks) {
    sum = after_week(plan, sum, week.events, reference_of(plan, week.hours));
    const bool alarm = sum >= plan.decision;
    out.push_back(
        {week.events, week.hours, plan.usual_rate * week.hours, static_cast<double>(sum) / plan.parts, alarm});
    if (alarm) sum = 0;
  }
  return out;
}

double alarms_expected(const WatchPlan& plan, std::span<const double> hours, double true_rate) {
  std::vector<double> chance(static_cast<std::size_t>(plan.decision), 0);
  chance[0] = 1;
  double alarms = 0;
  for (const double one : hours) {
    const int reference = reference_of(plan, one);
    const double mean = true_rate * one;
    // Beyond this every count leads to the same end of the sum's range.
    const int last = (plan.decision + reference) / plan.parts + 1;
    std::vector<double> next(chance.size(), 0);
    double alarm = 0;
    double left = 1;
    double own = std::exp(-mean);
    for (int count = 0; count <= last; ++count) {
      const double share = count == last ? left : own;
      for (std::size_t state = 0; state < chance.size(); ++state) {
        const std::int64_t sum = after_week(plan, static_cast<std::int64_t>(state), count, reference);
        (sum >= plan.decision ? alarm : next[static_cast<std::size_t>(sum)]) += share * chance[state];
      }
      left = std::max(0.0, left - own);
      own *= mean / (count + 1);
    }
    next[0] += alarm;
    alarms += alarm;
    chance = std::move(next);
  }
  return alarms;
}

int decision_for_alarms(WatchPlan plan, std::span<const double> hours, double most_alarms, int most) {
  const auto few_enough = [&](int decision) {
    plan.decision = decision;
    return alarms_expected(plan, hours, plan.usual_rate) <= most_alarms;
  };
  // A higher limit gives no more alarms.
  int low = 0;
  int high = most + 1;
  while (low + 1 < high) {
    const int middle = low + (high - low) / 2;
    (few_enough(middle) ? high : low) = middle;
  }
  return high;
}

}  // namespace lanework::evidence
