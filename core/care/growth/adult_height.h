// Adult height foretold without bone age: Khamis HJ, Roche AF 1994, Pediatrics 94(4):504-7, with the erratum of 1995,
// Pediatrics 95(3):457 (every mass coefficient as printed in 1994 is ten times too small). Made from white families of
// Ohio without growth disorders: not valid for every child, and every answer says so.
#pragma once

#include <optional>
#include <string>

#include "core/care/growth/growth_person.h"
#include "core/care/growth/growth_table.h"

namespace lanework::care::growth {

struct AdultHeight {
  double cm = 0;
  double low_cm = 0;  // nine in ten lie from low to high
  double high_cm = 0;
  double reached_percent = 0;      // of it, today; at most 100
  bool floored_at_height = false;  // the equation gave less than today's height
};

enum class WhyNoAdultHeight { kNoBirth, kNoSex, kNoMass, kNoParents, kAgeOutside };
const char* in_words(WhyNoAdultHeight why);

struct AdultHeightAnswer {
  std::optional<AdultHeight> height;
  WhyNoAdultHeight why = WhyNoAdultHeight::kNoBirth;  // where there is none
};

// Coefficients between two rows are drawn out linearly. Refused outside the rows of the table, and where sex, mass or a
// parent's height is not known.
AdultHeightAnswer adult_height(const GrowthTable& table, const GrowthPerson& person, const BodyMeasurement& measured);

// The equation itself, at an age of the table or between two. REQUIRES: the age lies within the table's.
double khamis_roche_cm(const GrowthTable& table, Sex sex, double age, double height_cm, double mass_kg,
                       double midparent_cm);

const std::string& band_of(const HeightBands& bands, double reached_percent);

}  // namespace lanework::care::growth
