#include "core/findings/taught_coaches.h"

#include <algorithm>
#include <numeric>
#include <vector>

#include "core/findings/reach.h"

namespace lanework::findings {
namespace {

// Of one squad in some of its weeks.
struct Done {
  int weeks = 0;
  double warm_ups = 0;
  int sessions_with = 0;
  int most_did = 0;

  [[nodiscard]] bool counts() const { return weeks >= kLeastTaughtWeeks; }
  [[nodiscard]] double a_week() const { return warm_ups / weeks; }
};

void add_week(const records::WeekTable& weeks, std::size_t squad, std::size_t week, Done& out) {
  const std::optional<double> warm_ups = warm_ups_in_week(weeks, squad, week);
  if (!warm_ups) return;
  ++out.weeks;
  out.warm_ups += *warm_ups;
  for (std::size_t setting = 0; setting < records::kSettings; ++setting) {
    const auto& counts = weeks.at(squad, week, static_cast<records::Setting>(setting)).warm_ups;
    out.most_did += counts[0];
    out.sessions_with += counts[0] + counts[1] + counts[2];
  }
}

double mean(const std::vector<double>& values) {
  return values.empty() ? 0 : std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

struct Lists {
  std::vector<double> a_week;
  std::vector<double> most_did;

  void add(const Done& done) {
    if (!done.counts()) return;
    a_week.push_back(done.a_week());
    if (done.sessions_with > 0) most_did.push_back(static_cast<double>(done.most_did) / done.sessions_with);
  }
  [[nodiscard]] TaughtArm arm() const {
    return {static_cast<int>(a_week.size()), mean(a_week), static_cast<int>(most_did.size()), mean(most_did)};
  }
};

}  // namespace

std::optional<TaughtCoaches> taught_coaches(const records::Season& season, const records::WeekTable& weeks,
                                            double level) {
  const auto has_day = [](const records::SquadRecord& squad) { return squad.taught.has_value(); };
  if (std::none_of(season.squads.begin(), season.squads.end(), has_day)) return {};
  Lists taught;
  Lists not_taught;
  std::vector<double> before;
  std::vector<double> after;
  std::vector<double> change;
  for (std::size_t squad = 0; squad < season.squads.size(); ++squad) {
    const std::optional<Date>& day = season.squads[squad].taught;
    Done earlier;
    Done later;
    for (std::size_t week = 0; week < weeks.weeks(); ++week) {
      const Date monday = records::monday_of(season.period, static_cast<int>(week));
      if (!day || Date{monday.days_since_epoch + 6} < *day) {
        add_week(weeks, squad, week, earlier);
      } else if (*day <= monday) {
        add_week(weeks, squad, week, later);
      }
    }
    if (!day || *day > season.period.last) {
      not_taught.add(earlier);
    } else {
      taught.add(later);
    }
    if (!earlier.counts() || !later.counts()) continue;
    before.push_back(earlier.a_week());
    after.push_back(later.a_week());
    change.push_back(after.back() - before.back());
  }
  TaughtCoaches out;
  out.taught = taught.arm();
  out.not_taught = not_taught.arm();
  out.a_week = evidence::welch_difference(taught.a_week, not_taught.a_week, level);
  out.most_did = evidence::welch_difference(taught.most_did, not_taught.most_did, level);
  out.squads_both = static_cast<int>(change.size());
  out.before = mean(before);
  out.after = mean(after);
  out.change = evidence::paired_difference(change, level);
  return out;
}

}  // namespace lanework::findings
