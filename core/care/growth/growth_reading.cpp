#include "core/care/growth/growth_reading.h"

#include <algorithm>
#include <cmath>

namespace lanework::care::growth {
namespace {

constexpr double kSpurtNearYears = 2;  // one for the spurt's breadth, one for the equations. own judgement

// Years from the spurt on the day, by every equation that could be asked at the last measurement.
std::vector<double> years_from_spurt(const GrowthPerson& person, const BodyMeasurement& last, Date day) {
  std::vector<double> out;
  for (const OffsetEstimate& one : offsets(person, last)) out.push_back(one.years + years_between(last.date, day));
  return out;
}

bool near_spurt(const GrowthPerson& person, const BodyMeasurement& last, Date day, double within) {
  if (!person.born) return true;
  const std::vector<double> years = years_from_spurt(person, last, day);
  return std::any_of(years.begin(), years.end(), [within](double one) { return std::abs(one) <= within; });
}

FastGrowth without_velocity(const GrowthTable& table, const GrowthPerson& person,
                            const std::vector<BodyMeasurement>& measured, Date day) {
  const std::string since = measured.size() < 2 ? "measured once" : "no two measurements far enough apart";
  if (!person.born)
    return {GrowsFast::kCannotBeTold, true, since + ", and no birth date is known; the careful side is taken"};
  if (near_spurt(person, measured.back(), day, kOffsetCautionYears))
    return {GrowsFast::kCannotBeTold, true, since + ", and the spurt may be now; the careful side is taken"};
  const int days = table.least_days_between;
  return {GrowsFast::kCannotBeTold, false,
          since + "; measure again " + std::to_string(days) + " days or more after the last"};
}

}  // namespace

FastGrowth fast_growth(const GrowthTable& table, const GrowthPerson& person,
                       const std::vector<BodyMeasurement>& measured, Date day) {
  if (measured.empty()) return {GrowsFast::kCannotBeTold, false, "not measured"};
  const std::optional<HeightVelocity> velocity = height_velocity(table, measured);
  if (!velocity) return without_velocity(table, person, measured, day);
  const double cut = table.fast_from_cm_a_year;
  const bool fast = velocity->cm_a_year >= cut;
  const bool old = days_between(velocity->to, day) > table.old_after_days;
  const bool long_ago = days_between(velocity->from, velocity->to) > table.most_days_between;
  if (!old && !long_ago && velocity->low >= cut)
    return {GrowsFast::kLikely, true, "the rate lies beyond the cut by more than the tape's error"};
  if (!old && !long_ago && velocity->high < cut)
    return {GrowsFast::kUnlikely, false, "the rate lies below the cut by more than the tape's error"};
  const std::string because = old        ? "the last measurement is old"
                              : long_ago ? "the two measurements lie far apart, and a mean hides what is now"
                                         : "the tape's error is too large to tell";
  if (fast) return {GrowsFast::kCannotBeTold, true, "it seems so, but " + because + "; the careful side is taken"};
  if (near_spurt(person, measured.back(), day, kSpurtNearYears))
    return {GrowsFast::kCannotBeTold, true, because + ", and the spurt may be near; the careful side is taken"};
  return {GrowsFast::kCannotBeTold, false, because + ", but the spurt is not near by any equation"};
}

GrowthReading read_growth(const GrowthTable& table, const GrowthPerson& person,
                          const std::vector<BodyMeasurement>& measured, Date day) {
  GrowthReading out;
  out.player = person.player;
  out.state = agreement_state(person.agreement, person.born, day);
  if (out.state != AgreementState::kOn) return out;
  out.ask_again = should_be_renewed(person.agreement, person.born, day);
  out.sex_known = person.sex.has_value();
  const Date since = agreed_since(person.agreement, person.born, day);
  for (const BodyMeasurement& one : measured) {
    if (one.date < since) {
      ++out.from_before_agreement;
    } else {
      out.measured.push_back(one);
    }
  }
  if (out.measured.empty()) return out;
  const BodyMeasurement& last = out.measured.back();
  out.offsets = offsets(person, last);
  out.ratio = maturity_ratio(person, last);
  out.adult = adult_height(table, person, last);
  out.velocity = height_velocity(table, out.measured);
  out.fast = fast_growth(table, person, out.measured, day);
  out.due = next_due(table, out.measured);
  return out;
}

}  // namespace lanework::care::growth
