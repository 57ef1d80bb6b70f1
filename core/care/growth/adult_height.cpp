#include "core/care/growth/adult_height.h"

#include <algorithm>
#include <cmath>

namespace lanework::care::growth {
namespace {

constexpr double kCentimetresAnInch = 2.54;
constexpr double kKilogramsAPound = 0.45359237;

AdultHeightCoefficients between(const AdultHeightCoefficients& a, const AdultHeightCoefficients& b, double share) {
  const auto mix = [share](double one, double other) { return one + share * (other - one); };
  return {mix(a.constant, b.constant), mix(a.height, b.height), mix(a.mass, b.mass), mix(a.midparent, b.midparent)};
}

AdultHeightCoefficients coefficients_at(const GrowthTable& table, Sex sex, double age) {
  const auto of = [sex](const AdultHeightRow& row) { return sex == Sex::kBoy ? row.boys : row.girls; };
  const auto after = std::lower_bound(table.adult_height.begin(), table.adult_height.end(), age,
                                      [](const AdultHeightRow& row, double value) { return row.age < value; });
  if (after == table.adult_height.end()) return of(table.adult_height.back());
  if (after == table.adult_height.begin()) return of(*after);
  const AdultHeightRow& before = *(after - 1);
  return between(of(before), of(*after), (age - before.age) / (after->age - before.age));
}

}  // namespace

double khamis_roche_cm(const GrowthTable& table, Sex sex, double age, double height_cm, double mass_kg,
                       double midparent_cm) {
  const AdultHeightCoefficients b = coefficients_at(table, sex, age);
  const double inches = b.constant + b.height * (height_cm / kCentimetresAnInch) +
                        b.mass * (mass_kg / kKilogramsAPound) + b.midparent * (midparent_cm / kCentimetresAnInch);
  return inches * kCentimetresAnInch;
}

AdultHeightAnswer adult_height(const GrowthTable& table, const GrowthPerson& person, const BodyMeasurement& measured) {
  if (!person.born) return {{}, WhyNoAdultHeight::kNoBirth};
  const double age = years_between(*person.born, measured.date);
  if (age < table.adult_height.front().age || age > table.adult_height.back().age)
    return {{}, WhyNoAdultHeight::kAgeOutside};
  if (!person.sex) return {{}, WhyNoAdultHeight::kNoSex};
  if (!measured.mass_kg) return {{}, WhyNoAdultHeight::kNoMass};
  if (!person.mother_cm || !person.father_cm) return {{}, WhyNoAdultHeight::kNoParents};
  const double midparent = (*person.mother_cm + *person.father_cm) / 2;
  const double said = khamis_roche_cm(table, *person.sex, age, measured.height_cm, *measured.mass_kg, midparent);
  const double error = *person.sex == Sex::kBoy ? table.adult_error_boys_cm : table.adult_error_girls_cm;
  AdultHeight out;
  out.floored_at_height = said < measured.height_cm;
  out.cm = std::max(said, measured.height_cm);
  out.low_cm = std::max(said - error, measured.height_cm);
  out.high_cm = std::max(said + error, measured.height_cm);
  out.reached_percent = 100 * measured.height_cm / out.cm;
  return {out, WhyNoAdultHeight::kNoBirth};
}

const char* in_words(WhyNoAdultHeight why) {
  switch (why) {
    case WhyNoAdultHeight::kNoBirth:
      return "no birth date is recorded";
    case WhyNoAdultHeight::kNoSex:
      return "no sex is recorded, and each has its own equation";
    case WhyNoAdultHeight::kNoMass:
      return "no mass was measured";
    case WhyNoAdultHeight::kNoParents:
      return "the heights of both parents are not recorded (measured ones: people overstate their own)";
    case WhyNoAdultHeight::kAgeOutside:
      return "the age lies outside the table";
  }
  return "";
}

const std::string& band_of(const HeightBands& bands, double reached_percent) {
  std::size_t at = 0;
  while (at + 1 < bands.bands.size() && reached_percent >= bands.bands[at + 1].from_percent) ++at;
  return bands.bands[at].name;
}

}  // namespace lanework::care::growth
