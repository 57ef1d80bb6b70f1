// How far a player is from the growth spurt (peak height velocity), from age and lengths. Two families of equations,
// each with its error; what comes out is a band of years, never a date. Ages in years, lengths in cm, mass in kg.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/care/growth/growth_person.h"

namespace lanework::care::growth {

// Mirwald RL, Baxter-Jones ADG, Bailey DA, Beunen GP 2002, doi 10.1097/00005768-200204000-00020: years before (-) or
// after (+) the spurt. The mass term is 100 x mass / height; copies without the factor 100 circulate and are wrong.
double mirwald_2002_offset(Sex sex, double age, double height_cm, double sitting_height_cm, double mass_kg);

// Moore SA, McKay HA, Macdonald H, et al. 2015, doi 10.1249/MSS.0000000000000588. Copies with -8.125741, and with
// -7.999994 without its decimal point, circulate and are wrong.
double moore_2015_boys_sitting_offset(double age, double sitting_height_cm);
double moore_2015_stature_offset(Sex sex, double age, double height_cm);

// Fransen J, Bush S, Woodcock S, et al. 2018, doi 10.1123/pes.2017-0009, boys of 8 to 17 only: age over the age at the
// spurt. The constant is plus; a copy that prints minus circulates and gives about -13.
double fransen_2018_ratio(double age, double height_cm, double leg_length_cm, double mass_kg);

enum class OffsetEquation { kMirwald2002, kMoore2015Sitting, kMoore2015Stature };

struct OffsetEstimate {
  OffsetEquation equation;
  Sex sex;                         // whose equation it is
  double years = 0;                // before (-) or after (+) the spurt
  double standard_error = 0;       // years
  bool error_is_borrowed = false;  // the equation's own was not read: the older family's is taken
  bool outside_best_ages = false;  // the ages it was made or found to do best at
};

// The published caution: predicted ages at the spurt are drawn towards the mean by about a year (Koziel and Malina
// 2018).
inline constexpr double kOffsetCautionYears = 1.0;
// Ages the equations are asked about. own judgement
inline constexpr double kYoungestOffset = 8.0;
inline constexpr double kOldestOffset = 18.0;

// Every equation that what was measured allows; of both sexes where none is recorded. Empty without a birth date, and
// outside kYoungestOffset to kOldestOffset.
std::vector<OffsetEstimate> offsets(const GrowthPerson& person, const BodyMeasurement& measured);

// From the lowest to the highest of the estimates, each with its caution. REQUIRES: not empty.
struct OffsetBand {
  double low;
  double high;
};
OffsetBand offset_band(const std::vector<OffsetEstimate>& estimates);

const char* equation_words(OffsetEquation equation);  // 'age, height, sitting height and mass (Mirwald 2002)'

// Boys of 8 to 17 with sitting height and mass; empty otherwise.
struct MaturityRatio {
  double ratio;
  double age_at_spurt;  // years, with the same caution
};
std::optional<MaturityRatio> maturity_ratio(const GrowthPerson& person, const BodyMeasurement& measured);

}  // namespace lanework::care::growth
