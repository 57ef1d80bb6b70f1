#include "core/care/growth/plausible.h"

#include <algorithm>

#include "core/care/growth/height_velocity.h"
#include "core/care/sheet/care_sheet.h"

namespace lanework::care::growth {
namespace {

constexpr double kCentimetresAMetre = 100;
constexpr double kCentimetresAnInch = 2.54;
constexpr double kMillimetresACentimetre = 10;
constexpr double kKilogramsAPound = 0.45359237;
constexpr double kHundred = 100;

constexpr const char* kMeasureAgain = "measure again; if it is right, this program's ranges do not fit this player";

bool within(double value, const ValueRange& range) { return value >= range.least && value <= range.most; }

std::string from_to(const ValueRange& range, const char* unit) {
  return "from " + short_decimal(range.least) + " to " + short_decimal(range.most) + " " + unit;
}

struct Slip {
  double factor;
  const char* hint;
};

std::string hint_for(double value, const ValueRange& range, const std::vector<Slip>& slips) {
  for (const Slip& slip : slips) {
    if (within(value * slip.factor, range)) return slip.hint;
  }
  return kMeasureAgain;
}

std::string hint_for_length(double value, const ValueRange& range) {
  return hint_for(value, range,
                  {{kCentimetresAMetre, "this seems to be in metres"},
                   {kCentimetresAnInch, "this seems to be in inches"},
                   {1 / kMillimetresACentimetre, "this seems to be in millimetres"}});
}

ValueRange over_all_ages(const GrowthTable& table, ValueRange PlausibleRow::*which) {
  ValueRange out = table.plausible.front().*which;
  for (const PlausibleRow& row : table.plausible) {
    out.least = std::min(out.least, (row.*which).least);
    out.most = std::max(out.most, (row.*which).most);
  }
  return out;
}

}  // namespace

std::vector<Implausible> implausible_in(const GrowthTable& table, const BodyMeasurement& measured,
                                        std::optional<int> age) {
  const auto range_of = [&](ValueRange PlausibleRow::*which) {
    return age ? plausible_at(table, *age).*which : over_all_ages(table, which);
  };
  const std::string at_age = age ? " at age " + std::to_string(*age) : std::string(" at any age");
  std::vector<Implausible> out;
  const ValueRange heights = range_of(&PlausibleRow::height_cm);
  const bool height_fits = within(measured.height_cm, heights);
  if (!height_fits) {
    out.push_back({MeasuredCell::kHeight, "a height " + from_to(heights, "cm") + at_age,
                   hint_for_length(measured.height_cm, heights)});
  }
  if (measured.sitting_height_cm && height_fits) {
    const ValueRange sitting{table.sitting_share.least * measured.height_cm,
                             table.sitting_share.most * measured.height_cm};
    if (!within(*measured.sitting_height_cm, sitting)) {
      std::string hint = hint_for_length(*measured.sitting_height_cm, sitting);
      if (*measured.sitting_height_cm > sitting.most && hint == kMeasureAgain)
        hint = "was the height of the seat taken off?";
      out.push_back({MeasuredCell::kSittingHeight,
                     "a sitting height of " + short_decimal(kHundred * table.sitting_share.least) + " to " +
                         short_decimal(kHundred * table.sitting_share.most) + " % of the height",
                     hint});
    }
  }
  const ValueRange masses = range_of(&PlausibleRow::mass_kg);
  if (measured.mass_kg && !within(*measured.mass_kg, masses)) {
    out.push_back({MeasuredCell::kMass, "a mass " + from_to(masses, "kg") + at_age,
                   hint_for(*measured.mass_kg, masses,
                            {{kKilogramsAPound, "this seems to be in pounds"},
                             {1 / (kHundred * kMillimetresACentimetre), "this seems to be in grams"}})});
  }
  return out;
}

std::optional<Implausible> implausible_after(const GrowthTable& table, const BodyMeasurement& before,
                                             const BodyMeasurement& after) {
  const double change = after.height_cm - before.height_cm;
  const double errors = 2 * table.measuring_error_cm;  // both ends at their worst
  const int days = days_between(before.date, after.date);
  if (change < -errors) {
    return Implausible{MeasuredCell::kHeight,
                       "at most " + short_decimal(errors) + " cm less than in line " + std::to_string(before.line),
                       "nobody shrinks by more than the tape's error: one of the two is wrong"};
  }
  if (change > errors + table.most_cm_a_year * days / kDaysAYear) {
    return Implausible{MeasuredCell::kHeight,
                       "at most " + short_decimal(table.most_cm_a_year) +
                           " cm a year, and the tape's error, more than in line " + std::to_string(before.line),
                       "nobody grows as fast: one of the two is wrong"};
  }
  return {};
}

}  // namespace lanework::care::growth
