// What is known of a player whose growth may be looked at. The lead's alone: nothing of it reaches a coach.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/care/growth/consent.h"

namespace lanework::care::growth {

enum class Sex { kBoy, kGirl };

struct GrowthPerson {
  std::string player;  // the roster's id
  std::optional<Date> born;
  std::optional<Sex> sex;
  std::optional<double> mother_cm;
  std::optional<double> father_cm;
  Agreement agreement;
  int line = 0;  // of the sheet
};

// One day's measurement; the mean, where two or three were taken.
struct BodyMeasurement {
  Date date;
  double height_cm = 0;
  std::optional<double> sitting_height_cm;
  std::optional<double> mass_kg;
  int line = 0;  // of the sheet
};

// Days over 365.25, as the equations take age.
inline constexpr double kDaysAYear = 365.25;
inline double years_between(Date from, Date to) { return days_between(from, to) / kDaysAYear; }

}  // namespace lanework::care::growth
