// Rules on weeks and on pairs of sessions.
#include <algorithm>

#include "core/check/week_sums.h"

namespace lanework::check {
namespace {

constexpr int kMinutesApart = 48 * 60;

std::string place_of(const EveningLedger& evening) { return words_of(evening.wish->date, evening.wish->start_minutes); }

void judge_apart(const SquadLedger& ledger, SquadFaults& faults) {
  for (std::size_t a = 0; a < ledger.evenings.size(); ++a) {
    for (std::size_t b = a + 1; b < ledger.evenings.size(); ++b) {
      const EveningLedger& first = ledger.evenings[a];
      const EveningLedger& second = ledger.evenings[b];
      if (first.match_day() || second.match_day() || !first.hard || !second.hard || second.over) continue;
      const int minutes = 24 * 60 * (second.wish->date.days_since_epoch - first.wish->date.days_since_epoch) +
                          second.wish->start_minutes - first.wish->start_minutes;
      if (minutes >= kMinutesApart) continue;
      faults.add_row(place_of(first), "apart", "hard, and so is " + place_of(second),
                     "of two less than 48 h apart at most one hard");
    }
  }
}

void judge_week(const std::string& where, const WeekSums& week, const LoadSums& ceilings, std::int64_t most_new,
                SquadFaults& faults) {
  const auto hold = [&](const char* rule, std::int64_t planned, std::int64_t used, std::int64_t ceiling) {
    const std::int64_t left = std::max<std::int64_t>(0, ceiling - used);
    if (planned > left) faults.add_row(where, rule, in_units(planned), "at most " + in_units(left));
  };
  hold("week-contacts", week.planned.contacts, week.fixed.contacts, ceilings.contacts);
  hold("week-eccentric", week.planned.eccentric, week.fixed.eccentric, ceilings.eccentric);
  hold("week-hard-running", week.planned.hard_running, week.fixed.hard_running, ceilings.hard_running);
  if (week.fresh > std::max<std::int64_t>(0, most_new - week.fresh_before)) {
    faults.add_row(where, "new-in-week", std::to_string(week.fresh) + " drills never done before",
                   "at most " + std::to_string(most_new));
  }
}

}  // namespace

void judge_time(const Matter& matter, int weeks, const SquadLedger& ledger, SquadFaults& faults) {
  judge_apart(ledger, faults);
  const std::vector<WeekSums> sums = week_sums(ledger, weeks);
  const LoadSums ceilings = week_ceilings(matter, ledger);
  for (std::size_t w = 0; w < sums.size(); ++w) {
    judge_week("week " + std::to_string(w + 1), sums[w], ceilings, matter.limits.most_new_drills + 1, faults);
  }
}

}  // namespace lanework::check
