#include "core/care/growth/height_velocity.h"

#include <cmath>

namespace lanework::care::growth {

const char* in_words(VelocityClass velocity) {
  switch (velocity) {
    case VelocityClass::kSlow:
      return "slow";
    case VelocityClass::kModerate:
      return "moderate";
    case VelocityClass::kFast:
      return "fast";
  }
  return "";
}

double cm_a_year(double change_cm, int days) { return change_cm / days * kDaysAYear; }

VelocityClass class_of(const GrowthTable& table, double cm_a_year) {
  if (cm_a_year < table.slow_below_cm_a_year) return VelocityClass::kSlow;
  return cm_a_year > table.fast_from_cm_a_year ? VelocityClass::kFast : VelocityClass::kModerate;
}

std::optional<HeightVelocity> height_velocity(const GrowthTable& table, const std::vector<BodyMeasurement>& measured) {
  if (measured.size() < 2) return {};
  const BodyMeasurement& last = measured.back();
  for (std::size_t i = measured.size() - 1; i-- > 0;) {
    const int days = days_between(measured[i].date, last.date);
    if (days < table.least_days_between) continue;
    HeightVelocity out;
    out.from = measured[i].date;
    out.to = last.date;
    out.cm_a_year = cm_a_year(last.height_cm - measured[i].height_cm, days);
    const double error = cm_a_year(std::sqrt(2.0) * table.measuring_error_cm, days);
    out.low = out.cm_a_year - error;
    out.high = out.cm_a_year + error;
    out.velocity = class_of(table, out.cm_a_year);
    return out;
  }
  return {};
}

Date next_due(const GrowthTable& table, const std::vector<BodyMeasurement>& measured) {
  return Date{measured.back().date.days_since_epoch + table.least_days_between};
}

}  // namespace lanework::care::growth
