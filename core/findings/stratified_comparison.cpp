#include "core/findings/stratified_comparison.h"

#include <algorithm>
#include <cmath>

namespace lanework::findings {
namespace {

using evidence::Interval;
using evidence::Stratum;

constexpr double kMostWithoutSetting = 0.1;
// Of fewer squads, each left out in turn says nothing worth reading: own judgement.
constexpr std::size_t kLeastSquads = 4;

void add(Stratum& sum, const Stratum& part) {
  sum.one.events += part.one.events;
  sum.one.hours += part.one.hours;
  sum.other.events += part.other.events;
  sum.other.hours += part.other.hours;
}

bool has_both(const Stratum& stratum) { return stratum.one.hours > 0 && stratum.other.hours > 0; }

// Strata with hours in both arms, without one squad's; an empty name leaves nobody out.
std::vector<Stratum> strata_without(const ArmCells& cells, const std::string& squad) {
  std::map<std::string, Stratum> sums;
  for (const auto& [key, counts] : cells)
    if (key.first != squad) add(sums[key.second], counts);
  std::vector<Stratum> out;
  for (const auto& [name, sum] : sums)
    if (has_both(sum)) out.push_back(sum);
  return out;
}

bool events_in_each(const std::vector<Stratum>& strata) {
  Stratum sum;
  for (const Stratum& stratum : strata) add(sum, stratum);
  return sum.one.events > 0 && sum.other.events > 0;
}

void count_squads(const ArmCells& cells, double level, StratifiedComparison& out) {
  std::vector<std::string> squads;
  for (const auto& [key, counts] : cells)
    if (squads.empty() || squads.back() != key.first) squads.push_back(key.first);
  if (squads.size() < kLeastSquads) return;
  std::vector<double> log_ratios;
  std::vector<double> differences;
  for (const std::string& squad : squads) {
    const std::vector<Stratum> left = strata_without(cells, squad);
    if (!events_in_each(left)) return;
    log_ratios.push_back(std::log(evidence::mantel_haenszel_ratio(left, level).estimate));
    differences.push_back(evidence::mantel_haenszel_difference(left, level).estimate);
  }
  evidence::LeftOut ratio = evidence::limits_by_leaving_out(std::log(out.ratio->estimate), log_ratios, level);
  ratio.limits = {std::exp(ratio.limits.low), std::exp(ratio.limits.high)};
  out.ratio_by_squads = ratio;
  out.difference_by_squads = evidence::limits_by_leaving_out(out.difference->estimate, differences, level);
}

Interval wider(const Interval& a, const Interval& b) { return {std::min(a.low, b.low), std::max(a.high, b.high)}; }

}  // namespace

Interval StratifiedComparison::ratio_limits() const { return wider(ratio->limits, ratio_by_squads->limits); }

Interval StratifiedComparison::difference_limits() const {
  return wider(difference->limits, difference_by_squads->limits);
}

StratifiedComparison compare_arms(const ArmCells& cells, double level) {
  StratifiedComparison out;
  Stratum all;
  std::map<std::string, Stratum> sums;
  for (const auto& [key, counts] : cells) {
    add(all, counts);
    add(sums[key.second], counts);
  }
  out.one = all.one;
  out.other = all.other;
  if (!has_both(all)) return out;
  out.crude = evidence::rate_ratio(all.one, all.other);
  out.exact = evidence::exact_ratio(all.one, all.other, level);
  ArmCells inside;
  for (const auto& [key, counts] : cells) {
    if (has_both(sums[key.second])) {
      inside.emplace(key, counts);
      continue;
    }
    out.hours_outside += counts.one.hours + counts.other.hours;
    out.events_outside += counts.one.events + counts.other.events;
  }
  const std::vector<Stratum> strata = strata_without(inside, {});
  out.strata = static_cast<int>(strata.size());
  std::string last;
  for (const auto& [key, counts] : inside) {
    if (key.first != last) ++out.squads;
    last = key.first;
  }
  if (!events_in_each(strata)) return out;
  out.ratio = evidence::mantel_haenszel_ratio(strata, level);
  out.difference = evidence::mantel_haenszel_difference(strata, level);
  count_squads(inside, level, out);
  return out;
}

bool settings_are_known(const records::Season& season) {
  int events = 0;
  int without = 0;
  for (const records::InjuryEvent& event : records::events_of(season.injuries)) {
    ++events;
    without += season.injuries[event.diagnoses.front()].setting ? 0 : 1;
  }
  return without <= kMostWithoutSetting * events;
}

std::string stratum_name(const records::SquadRecord& squad, std::optional<records::Setting> setting) {
  const std::string age = squad.age_band.empty() ? "age not known" : squad.age_band;
  if (!setting) return age;
  return age + (*setting == records::Setting::kMatch ? ", match" : ", training");
}

}  // namespace lanework::findings
