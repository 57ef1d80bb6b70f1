#include "core/evidence/time_loss.h"

#include <algorithm>

namespace lanework::evidence {

DaysLost days_lost(const Absence& absence, Date as_of) {
  const bool open = !absence.returned || *absence.returned > as_of;
  if (!absence.days_missed.empty()) {
    std::vector<Date> days;
    std::copy_if(absence.days_missed.begin(), absence.days_missed.end(), std::back_inserter(days),
                 [&](Date day) { return day <= as_of; });
    std::sort(days.begin(), days.end());
    days.erase(std::unique(days.begin(), days.end()), days.end());
    return {static_cast<int>(days.size()), open};
  }
  // Of one that is open the day of the report is lost too.
  const int until = open ? days_between(absence.begins, as_of) : days_between(absence.begins, *absence.returned) - 1;
  return {std::max(0, until), open};
}

SeverityBand severity_band(int days) {
  if (days <= 0) return SeverityBand::kNone;
  if (days <= 7) return SeverityBand::kToAWeek;
  return days <= 28 ? SeverityBand::kToFourWeeks : SeverityBand::kLonger;
}

}  // namespace lanework::evidence
