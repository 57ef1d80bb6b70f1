#include "core/findings/reach.h"

#include <algorithm>
#include <map>

namespace lanework::findings {
namespace {

SquadReach reach_of(const records::WeekTable& weeks, std::size_t squad) {
  SquadReach out;
  out.squad = squad;
  std::array<double, 2> done{};
  std::array<int, 2> held{};
  for (std::size_t week = 0; week < weeks.weeks(); ++week) {
    for (std::size_t setting = 0; setting < records::kSettings; ++setting) {
      const records::WeekHours& cell = weeks.at(squad, week, static_cast<records::Setting>(setting));
      for (std::size_t w = 0; w <= records::kWarmUps; ++w) out.sessions[w] += cell.warm_ups[w];
    }
    out.weeks_with_sessions += dose_of(weeks, squad, week).sessions > 0 ? 1 : 0;
    const std::optional<double> own = warm_ups_in_week(weeks, squad, week);
    if (!own) continue;
    const std::size_t half = 2 * week < weeks.weeks() ? 0 : 1;
    done[half] += *own;
    ++held[half];
  }
  out.weeks_known = held[0] + held[1];
  if (out.weeks_known > 0) out.warm_ups_a_week = (done[0] + done[1]) / out.weeks_known;
  if (held[0] > 0) out.first_half = done[0] / held[0];
  if (held[1] > 0) out.second_half = done[1] / held[1];
  return out;
}

std::optional<double> mean_of(const std::vector<std::optional<double>>& values) {
  double sum = 0;
  int known = 0;
  for (const std::optional<double>& value : values) {
    sum += value.value_or(0);
    known += value ? 1 : 0;
  }
  if (known == 0) return {};
  return sum / known;
}

AgeReach reach_of_age(const records::Season& season, const std::vector<SquadReach>& squads, const std::string& band) {
  AgeReach out;
  out.age_band = band;
  std::vector<std::optional<double>> whole;
  std::vector<std::optional<double>> first;
  std::vector<std::optional<double>> second;
  for (const SquadReach& squad : squads) {
    if (season.squads[squad.squad].age_band != band) continue;
    ++out.squads;
    out.reached += squad.reached() ? 1 : 0;
    out.taken_up += squad.taken_up() ? 1 : 0;
    out.most_did_it += squad.sessions[0];
    out.sessions += squad.known();
    whole.push_back(squad.warm_ups_a_week);
    first.push_back(squad.first_half);
    second.push_back(squad.second_half);
  }
  out.warm_ups_a_week = mean_of(whole);
  out.first_half = mean_of(first);
  out.second_half = mean_of(second);
  return out;
}

std::vector<DrillNamed> named_drills(const records::Season& season) {
  std::map<std::string, DrillNamed> by_name;
  for (const records::Exposure& exposure : season.exposures) {
    for (const std::string& drill : exposure.left_out) ++by_name[drill].left_out;
    for (const std::string& drill : exposure.needing_help) ++by_name[drill].needing_help;
  }
  std::vector<DrillNamed> out;
  for (auto& [name, drill] : by_name) {
    drill.drill = name;
    out.push_back(drill);
  }
  std::stable_sort(out.begin(), out.end(), [](const DrillNamed& a, const DrillNamed& b) {
    return a.left_out + a.needing_help > b.left_out + b.needing_help;
  });
  return out;
}

}  // namespace

int Reach::reached() const {
  return static_cast<int>(std::count_if(squads.begin(), squads.end(), [](const auto& s) { return s.reached(); }));
}
int Reach::taken_up() const {
  return static_cast<int>(std::count_if(squads.begin(), squads.end(), [](const auto& s) { return s.taken_up(); }));
}

Reach reach_of_warm_ups(const records::Season& season, const records::WeekTable& weeks) {
  Reach out;
  for (std::size_t squad = 0; squad < season.squads.size(); ++squad) out.squads.push_back(reach_of(weeks, squad));
  std::vector<std::string> bands = season.age_bands();
  bands.emplace_back();
  for (const std::string& band : bands) {
    AgeReach age = reach_of_age(season, out.squads, band);
    if (age.squads > 0) out.ages.push_back(std::move(age));
  }
  out.drills = named_drills(season);
  return out;
}

WeekDose dose_of(const records::WeekTable& weeks, std::size_t squad, std::size_t week) {
  WeekDose out;
  for (std::size_t setting = 0; setting < records::kSettings; ++setting) {
    const records::WeekHours& cell = weeks.at(squad, week, static_cast<records::Setting>(setting));
    for (std::size_t w = 0; w < records::kWarmUps; ++w) {
      out.warm_ups += kDoneShare[w] * cell.warm_ups[w];
      out.known_sessions += cell.warm_ups[w];
    }
    out.sessions += cell.sessions;
  }
  return out;
}

std::optional<double> warm_ups_in_week(const records::WeekTable& weeks, std::size_t squad, std::size_t week) {
  const WeekDose dose = dose_of(weeks, squad, week);
  if (dose.sessions == 0 || dose.known_sessions == 0) return {};
  return dose.warm_ups * dose.sessions / dose.known_sessions;
}

std::optional<double> warm_ups_lately(const records::WeekTable& weeks, std::size_t squad, std::size_t week) {
  double done = 0;
  int held = 0;
  for (std::size_t back = 0; back < kLateWeeks && back <= week; ++back) {
    const std::optional<double> own = warm_ups_in_week(weeks, squad, week - back);
    if (!own) continue;
    done += *own;
    ++held;
  }
  if (held == 0) return {};
  return done / held;
}

}  // namespace lanework::findings
