// How fast a player grows, with what the tape's error makes of it. Two measurements closer than the least days apart
// say nothing; the fast cut is Monasterio X, Cumming SP, Larruskain J, et al. 2024, Biol Sport 41(1):235-44 (84 academy
// boys: not girls, and no line between safe and unsafe).
#pragma once

#include <optional>
#include <vector>

#include "core/care/growth/growth_person.h"
#include "core/care/growth/growth_table.h"

namespace lanework::care::growth {

enum class VelocityClass { kSlow, kModerate, kFast };
const char* in_words(VelocityClass velocity);  // 'slow', 'moderate', 'fast'

struct HeightVelocity {
  Date from;
  Date to;
  double cm_a_year = 0;  // below 0 where the tape's error makes it so
  double low = 0;        // with the error of both measurements
  double high = 0;
  VelocityClass velocity = VelocityClass::kModerate;
};

// Of a change over so many days; no interval of its own. REQUIRES: days > 0.
double cm_a_year(double change_cm, int days);
// Slow below the one cut, fast above the other; on a cut moderate, as printed.
VelocityClass class_of(const GrowthTable& table, double cm_a_year);

// From the last measurement and the latest one that lies at least the least days before it; empty where there is none.
// Both errors are taken to be independent: the interval is the root of their two squares. own judgement
// measured: by date, ascending.
std::optional<HeightVelocity> height_velocity(const GrowthTable& table, const std::vector<BodyMeasurement>& measured);

// The first day on which a measurement gives a velocity with the last one. REQUIRES: measured is not empty.
Date next_due(const GrowthTable& table, const std::vector<BodyMeasurement>& measured);

}  // namespace lanework::care::growth
