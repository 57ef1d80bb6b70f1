#include "core/records/season.h"

#include <algorithm>
#include <unordered_map>

namespace lanework::records {
namespace {

// 1970-01-01 was a Thursday.
int monday_before(Date day) {
  const int since_a_monday = day.days_since_epoch + 3;
  return day.days_since_epoch - (since_a_monday % 7 + 7) % 7;
}

}  // namespace

Result<Period> make_period(Date first, Date last, Date as_of, const Place& where) {
  Faults faults;
  if (last < first) {
    faults.push_back({FaultCode::kContradiction,
                      where,
                      "a period to " + to_iso(last),
                      "a last day that is not before the first, " + to_iso(first),
                      {}});
  } else if (days_between(first, last) >= kMostPeriodDays) {
    faults.push_back({FaultCode::kOutOfRange, where, to_iso(first) + " to " + to_iso(last), "at most three years", {}});
  }
  if (as_of < first) {
    faults.push_back({FaultCode::kContradiction,
                      where,
                      to_iso(as_of) + " as the last day known",
                      "a day that is not before the period's first, " + to_iso(first),
                      {}});
  }
  if (!faults.empty()) return faults;
  return Period{first, last, as_of};
}

std::vector<std::string> Season::age_bands() const {
  std::vector<std::string> out;
  for (const SquadRecord& squad : squads)
    if (!squad.age_band.empty()) out.push_back(squad.age_band);
  std::sort(out.begin(), out.end(), [](const std::string& a, const std::string& b) {
    return a.size() != b.size() ? a.size() < b.size() : a < b;
  });
  out.erase(std::unique(out.begin(), out.end()), out.end());
  return out;
}

int week_of(const Period& period, Date day) { return (monday_before(day) - monday_before(period.first)) / 7; }

Date monday_of(const Period& period, int week) { return Date{monday_before(period.first) + 7 * week}; }

int weeks_in(const Period& period) { return week_of(period, period.last) + 1; }

std::vector<InjuryEvent> events_of(const std::vector<InjuryRecord>& injuries) {
  std::vector<InjuryEvent> events;
  std::unordered_map<std::string, std::size_t> by_id;
  for (std::size_t i = 0; i < injuries.size(); ++i) {
    std::size_t at = events.size();
    if (!injuries[i].event.empty()) at = by_id.emplace(injuries[i].event, at).first->second;
    if (at == events.size()) events.emplace_back();
    events[at].diagnoses.push_back(static_cast<std::uint32_t>(i));
  }
  return events;
}

evidence::DaysLost time_loss(const InjuryRecord& injury, Date as_of) {
  return evidence::days_lost({injury.loss_began.value_or(injury.date), injury.returned, injury.days_missed}, as_of);
}

evidence::DaysLost time_loss(const Season& season, const InjuryEvent& event) {
  evidence::DaysLost worst;
  for (const std::uint32_t diagnosis : event.diagnoses) {
    const evidence::DaysLost one = time_loss(season.injuries[diagnosis], season.period.as_of);
    worst.days = std::max(worst.days, one.days);
    worst.open = worst.open || one.open;
  }
  return worst;
}

}  // namespace lanework::records
