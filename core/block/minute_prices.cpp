#include "core/block/minute_prices.h"

#include <algorithm>

#include "core/block/set_worth.h"

namespace lanework::block {
namespace {

constexpr int kSecondsAMinute = 60;

class MinutePricing {
 public:
  MinutePricing(const Outline& outline, const Built& built, const Answer& answer, const WeekEffort& effort)
      : built_(built), answer_(answer), effort_(effort), days_(days_of(outline, built)) {}

  // Of all days the one whose bound rises most, or falls least; then solved again.
  std::optional<MinutePrice> best(int minutes) {
    const DayOfWeek* chosen = nullptr;
    std::int64_t highest = 0;
    for (const DayOfWeek& day : days_) {
      const std::int64_t bound = bound_with(with_minutes(built_.problem, day.sessions, minutes));
      if (chosen != nullptr && bound <= highest) continue;
      chosen = &day;
      highest = bound;
    }
    if (chosen == nullptr) return {};
    return worked_out(*chosen, minutes);
  }

 private:
  const Built& built_;
  const Answer& answer_;
  const WeekEffort& effort_;
  std::vector<DayOfWeek> days_;
  std::optional<Evaluation> as_it_is_;

  [[nodiscard]] std::int64_t bound_with(const Problem& problem) const {
    constexpr int kRounds = 12;
    SetWorth worth(problem);
    std::int64_t sum = 0;
    for (std::size_t p = 0; p < answer_.plan.sets.size(); ++p) sum += worth.bound(p, answer_.plan.sets[p], kRounds);
    return sum;
  }

  [[nodiscard]] Evaluation solved(const Problem& problem) const {
    return evaluate(problem, SetWorth(problem).plan_of(answer_.plan.sets, effort_));
  }

  MinutePrice worked_out(const DayOfWeek& day, int minutes) {
    if (!as_it_is_) as_it_is_ = solved(built_.problem);
    const Evaluation after = solved(with_minutes(built_.problem, day.sessions, minutes));
    MinutePrice out{day, minutes, as_it_is_->value, after.value, {}};
    for (std::size_t f = 0; f < built_.problem.families.size(); ++f) {
      int gained = 0;
      for (std::size_t w = 0; w < after.credits.size(); ++w) gained += after.credits[w][f] - as_it_is_->credits[w][f];
      out.credits.push_back(gained);
    }
    return out;
  }
};

}  // namespace

std::vector<DayOfWeek> days_of(const Outline& outline, const Built& built) {
  std::vector<DayOfWeek> out;
  for (std::size_t s = 0; s < built.problem.sessions.size(); ++s) {
    const session::Evening& evening = outline.evenings[built.evening_of[s]];
    const int weekday = days_between(outline.monday, evening.date) % 7;
    const auto same = [&](const DayOfWeek& day) { return day.weekday == weekday && day.start == evening.start; };
    auto at = std::find_if(out.begin(), out.end(), same);
    if (at == out.end()) {
      out.push_back({weekday, evening.start, {}});
      at = out.end() - 1;
    }
    at->sessions.push_back(s);
  }
  std::sort(out.begin(), out.end(), [](const DayOfWeek& a, const DayOfWeek& b) {
    return a.weekday != b.weekday ? a.weekday < b.weekday : a.start < b.start;
  });
  return out;
}

Problem with_minutes(const Problem& problem, const std::vector<std::size_t>& sessions, int minutes) {
  Problem out = problem;
  for (const std::size_t s : sessions) {
    int& budget = out.sessions[s].budget;
    budget = std::max(0, budget + minutes * kSecondsAMinute / kStepSeconds);
  }
  return out;
}

MinutePrices minute_prices(const Outline& outline, const Built& built, const Answer& answer, int minutes_more,
                           int minutes_fewer, const WeekEffort& effort) {
  MinutePrices out;
  if (!answer.feasible || built.problem.sessions.empty()) return out;
  MinutePricing pricing(outline, built, answer, effort);
  out.best_longer = pricing.best(minutes_more);
  out.best_shorter = pricing.best(-minutes_fewer);
  return out;
}

}  // namespace lanework::block
