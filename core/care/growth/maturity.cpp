#include "core/care/growth/maturity.h"

#include <algorithm>

namespace lanework::care::growth {
namespace {

constexpr double kMirwaldErrorBoys = 0.59;
constexpr double kMirwaldErrorGirls = 0.57;

double mirwald_error(Sex sex) { return sex == Sex::kBoy ? kMirwaldErrorBoys : kMirwaldErrorGirls; }

// Where the equations are said to do best: boys 12 to 16, girls 9 to 13.
bool outside_best_ages(Sex sex, double age) { return sex == Sex::kBoy ? age < 12 || age > 16 : age < 9 || age > 13; }

}  // namespace

double mirwald_2002_offset(Sex sex, double age, double height_cm, double sitting_height_cm, double mass_kg) {
  const double leg = height_cm - sitting_height_cm;
  const double mass_by_height = 100 * mass_kg / height_cm;
  if (sex == Sex::kBoy) {
    return -9.236 + 0.0002708 * (leg * sitting_height_cm) - 0.001663 * (age * leg) +
           0.007216 * (age * sitting_height_cm) + 0.02292 * mass_by_height;
  }
  return -9.376 + 0.0001882 * (leg * sitting_height_cm) + 0.0022 * (age * leg) + 0.005841 * (age * sitting_height_cm) -
         0.002658 * (age * mass_kg) + 0.07693 * mass_by_height;
}

double moore_2015_boys_sitting_offset(double age, double sitting_height_cm) {
  return -8.128741 + 0.0070346 * (age * sitting_height_cm);
}

double moore_2015_stature_offset(Sex sex, double age, double height_cm) {
  if (sex == Sex::kBoy) return -7.999994 + 0.0036124 * (age * height_cm);
  return -7.709133 + 0.0042232 * (age * height_cm);
}

double fransen_2018_ratio(double age, double height_cm, double leg_length_cm, double mass_kg) {
  const double h = height_cm;
  return 6.986547255416 + 0.115802846632 * age + 0.001450825199 * age * age + 0.004518400406 * mass_kg -
         0.000034086447 * mass_kg * mass_kg - 0.151951447289 * h + 0.000932836659 * h * h - 0.000001656585 * h * h * h +
         0.032198263733 * leg_length_cm - 0.000269025264 * leg_length_cm * leg_length_cm - 0.000760897942 * h * age;
}

std::vector<OffsetEstimate> offsets(const GrowthPerson& person, const BodyMeasurement& measured) {
  std::vector<OffsetEstimate> out;
  if (!person.born) return out;
  const double age = years_between(*person.born, measured.date);
  if (age < kYoungestOffset || age > kOldestOffset) return out;
  for (const Sex sex : {Sex::kBoy, Sex::kGirl}) {
    if (person.sex && *person.sex != sex) continue;
    const bool outside = outside_best_ages(sex, age);
    const auto add = [&](OffsetEquation equation, double years) {
      out.push_back({equation, sex, years, mirwald_error(sex), equation != OffsetEquation::kMirwald2002, outside});
    };
    if (measured.sitting_height_cm && measured.mass_kg) {
      add(OffsetEquation::kMirwald2002,
          mirwald_2002_offset(sex, age, measured.height_cm, *measured.sitting_height_cm, *measured.mass_kg));
    }
    if (sex == Sex::kBoy && measured.sitting_height_cm) {
      add(OffsetEquation::kMoore2015Sitting, moore_2015_boys_sitting_offset(age, *measured.sitting_height_cm));
    }
    add(OffsetEquation::kMoore2015Stature, moore_2015_stature_offset(sex, age, measured.height_cm));
  }
  return out;
}

OffsetBand offset_band(const std::vector<OffsetEstimate>& estimates) {
  const auto [least, most] =
      std::minmax_element(estimates.begin(), estimates.end(),
                          [](const OffsetEstimate& a, const OffsetEstimate& b) { return a.years < b.years; });
  return {least->years - kOffsetCautionYears, most->years + kOffsetCautionYears};
}

const char* equation_words(OffsetEquation equation) {
  switch (equation) {
    case OffsetEquation::kMirwald2002:
      return "age, height, sitting height and mass (Mirwald 2002)";
    case OffsetEquation::kMoore2015Sitting:
      return "age and sitting height (Moore 2015)";
    case OffsetEquation::kMoore2015Stature:
      return "age and height (Moore 2015)";
  }
  return "";
}

std::optional<MaturityRatio> maturity_ratio(const GrowthPerson& person, const BodyMeasurement& measured) {
  constexpr double kYoungest = 8;
  constexpr double kOldest = 17;
  if (!person.born || person.sex != Sex::kBoy || !measured.sitting_height_cm || !measured.mass_kg) return {};
  const double age = years_between(*person.born, measured.date);
  if (age < kYoungest || age > kOldest) return {};
  const double ratio =
      fransen_2018_ratio(age, measured.height_cm, measured.height_cm - *measured.sitting_height_cm, *measured.mass_kg);
  if (ratio <= 0) return {};
  return MaturityRatio{ratio, age / ratio};
}

}  // namespace lanework::care::growth
