#include "core/findings/often_or_not.h"

#include "core/findings/reach.h"

namespace lanework::findings {
namespace {

using evidence::Exposed;

constexpr std::array<records::Setting, records::kSettings> kBoth = {records::Setting::kTraining,
                                                                    records::Setting::kMatch};

// Of each squad and week whether it came after often, seldom, or nobody knows.
class WeekArms {
 public:
  WeekArms(const records::Season& season, const records::WeekTable& weeks) : weeks_(weeks) {
    for (std::size_t squad = 0; squad < season.squads.size(); ++squad) {
      for (std::size_t week = 0; week < weeks.weeks(); ++week) {
        const bool held = hours(squad, week, kBoth[0]) + hours(squad, week, kBoth[1]) > 0;
        held_.push_back(held);
        lately_.push_back(held ? warm_ups_lately(weeks, squad, week) : std::nullopt);
      }
    }
  }

  [[nodiscard]] double hours(std::size_t squad, std::size_t week, records::Setting setting) const {
    return static_cast<double>(weeks_.at(squad, week, setting).hours.count) / 60;
  }
  [[nodiscard]] bool held(std::size_t squad, std::size_t week) const { return held_[squad * weeks_.weeks() + week]; }
  // Empty: not held, or not known.
  [[nodiscard]] std::optional<bool> often(std::size_t squad, std::size_t week) const {
    const std::optional<double>& lately = lately_[squad * weeks_.weeks() + week];
    if (!lately) return {};
    return *lately >= kOftenAWeek;
  }

 private:
  const records::WeekTable& weeks_;
  std::vector<bool> held_;
  std::vector<std::optional<double>> lately_;
};

Exposed& arm(evidence::Stratum& counts, bool often) { return often ? counts.one : counts.other; }

ArmCells cells_of(const records::Season& season, const records::WeekTable& weeks, const WeekArms& arms,
                  OftenOrNot& out) {
  ArmCells cells;
  const auto cell = [&](std::size_t squad, records::Setting setting) -> evidence::Stratum& {
    const records::SquadRecord& record = season.squads[squad];
    const auto by = out.by_setting ? std::optional(setting) : std::nullopt;
    return cells[{record.id, stratum_name(record, by)}];
  };
  for (std::size_t squad = 0; squad < season.squads.size(); ++squad) {
    for (std::size_t week = 0; week < weeks.weeks(); ++week) {
      if (!arms.held(squad, week)) continue;
      const std::optional<bool> often = arms.often(squad, week);
      ++(!often ? out.weeks_unknown : *often ? out.weeks_often : out.weeks_seldom);
      if (!often) continue;
      for (const records::Setting setting : kBoth) {
        const double hours = arms.hours(squad, week, setting);
        if (hours > 0) arm(cell(squad, setting), *often).hours += hours;
      }
    }
  }
  for (const records::InjuryEvent& event : records::events_of(season.injuries)) {
    const records::InjuryRecord& first = season.injuries[event.diagnoses.front()];
    const auto week = static_cast<std::size_t>(records::week_of(season.period, first.date));
    const std::optional<bool> often = arms.often(first.squad, week);
    if (!often || (out.by_setting && !first.setting)) {
      ++out.events_left_out;
      continue;
    }
    ++arm(cell(first.squad, first.setting.value_or(kBoth[0])), *often).events;
  }
  return cells;
}

WholeSquads whole_squads(const ArmCells& cells, double level) {
  std::map<std::string, evidence::Stratum> squads;
  for (const auto& [key, counts] : cells) {
    evidence::Stratum& sum = squads[key.first];
    sum.one.events += counts.one.events;
    sum.one.hours += counts.one.hours;
    sum.other.events += counts.other.events;
    sum.other.hours += counts.other.hours;
  }
  std::vector<Exposed> often;
  std::vector<Exposed> seldom;
  std::int64_t often_events = 0;
  std::int64_t seldom_events = 0;
  for (const auto& [name, counts] : squads) {
    if ((counts.one.hours > 0) == (counts.other.hours > 0)) continue;
    (counts.one.hours > 0 ? often : seldom).push_back(counts.one.hours > 0 ? counts.one : counts.other);
    often_events += counts.one.events;
    seldom_events += counts.other.events;
  }
  WholeSquads out{static_cast<int>(often.size()), static_cast<int>(seldom.size()), {}};
  if (often.size() < 2 || seldom.size() < 2 || often_events == 0 || seldom_events == 0) return out;
  const evidence::ClusteredRatio ratio = evidence::clustered_ratio(often, seldom, level);
  if (ratio.error > 0) out.ratio = ratio;
  return out;
}

double hours_a_squad_season(const records::Season& season) {
  std::vector<double> hours(season.squads.size(), 0);
  for (const records::Exposure& exposure : season.exposures)
    hours[exposure.squad] += static_cast<double>(exposure.hours.count) / 60;
  double sum = 0;
  int squads = 0;
  for (const double own : hours) {
    sum += own;
    squads += own > 0 ? 1 : 0;
  }
  return squads > 0 ? sum / squads : 0;
}

}  // namespace

OftenOrNot often_or_not(const records::Season& season, const records::WeekTable& weeks, double level) {
  OftenOrNot out;
  out.by_setting = settings_are_known(season);
  const ArmCells cells = cells_of(season, weeks, WeekArms(season, weeks), out);
  out.compared = compare_arms(cells, level);
  out.whole_squads = whole_squads(cells, level);
  out.hours_a_squad_season = hours_a_squad_season(season);
  if (!out.compared.difference_by_squads) return out;
  const evidence::Interval difference = out.compared.difference_limits();
  const double hours = out.hours_a_squad_season;
  out.needed = evidence::needed_to_treat(-out.compared.difference->estimate * hours,
                                         {-difference.high * hours, -difference.low * hours});
  return out;
}

}  // namespace lanework::findings
