#include <utility>

#include "core/care/environment/degrees_text.h"
#include "core/care/environment/judge.h"
#include "core/care/environment/take_band.h"

namespace lanework::care::environment {
namespace {

const char* how_words(MeasuredHow how) {
  switch (how) {
    case MeasuredHow::kMeter:
      return "by a meter";
    case MeasuredHow::kThermometersOutdoors:
      return "from wet bulb, globe and air";
    case MeasuredHow::kThermometersIndoors:
      break;
  }
  return "from wet bulb and globe, without sun";
}

std::string number_words(const MeasuredWetBulbGlobe& measured) {
  return "wet-bulb globe " + in_both(measured.value()) + ", measured " + how_words(measured.how()) + ", give or take " +
         to_text(measured.error());
}

std::string number_words(const EstimatedWetBulbGlobe& estimated) {
  const char* how = estimated.how() == EstimatedHow::kSimplified ? "from air and humidity, for sun and light wind"
                                                                 : "from air and humidity, for no sun";
  return "wet-bulb globe about " + in_both(estimated.value()) + ", a rough estimate and no reading (" + how +
         "), give or take " + to_text(estimated.error()) + ", so taken as " + in_both(estimated.at_most());
}

// Who counts as not used to heat, and why; only where the table tells the two apart.
bool unused_to_heat(const Weather& weather, const BandTable& table, std::vector<std::string>& cautions) {
  if (!table.two_columns) return false;
  std::string why;
  if (!weather.acclimatised_days) {
    why = "how many days they have trained in such heat is not known";
  } else if (*weather.acclimatised_days < kUsedToHeatAfterDays) {
    why = "fewer than " + std::to_string(kUsedToHeatAfterDays) + " days of training in such heat";
  } else if (!weather.youngest_age) {
    why = "the youngest player's age is not known";
  } else if (*weather.youngest_age < kYoungBelowYears) {
    why = "players younger than " + std::to_string(kYoungBelowYears) + " are slower to get used to heat";
  }
  if (why.empty()) return false;
  cautions.push_back(why + ": all count as not used to heat");
  return true;
}

EstimatedWetBulbGlobe estimate(const Weather& weather, RelativeHumidity humidity) {
  const bool no_sun = weather.indoor || weather.sun == Sun::kNone;
  return no_sun ? EstimatedWetBulbGlobe::without_sun(*weather.air, humidity)
                : EstimatedWetBulbGlobe::simplified(*weather.air, humidity);
}

void judge_measured(const Weather& weather, const BandTable& table, const MeasuredAge& age, HeatVerdict& out) {
  Found found{Topic::kHeat, 0, number_words(*weather.wet_bulb_globe), {}, 0, false, false};
  found.unused_to_heat = unused_to_heat(weather, table, found.cautions);
  out.measured = weather.wet_bulb_globe;
  const Ruling ruling = rule(table, *weather.wet_bulb_globe);
  found.band = ruling.band;
  const Celsius at_most{out.measured->value().degrees + out.measured->error().degrees};
  if (band_of(table, in_unit_of(table, at_most)) != ruling.band)
    found.cautions.emplace_back("the next band begins within the reading's error");
  out.allowed_as_usual = allows_as_usual(table, ruling, !found.unused_to_heat) && !age.stale();
  out.verdict = take_band(table, std::move(found), age);
}

void judge_estimated(const Weather& weather, const BandTable& table, const MeasuredAge& age, HeatVerdict& out) {
  Found found{Topic::kHeat, 0, {}, {}, 0, false, false};
  if (!weather.humidity)
    found.cautions.push_back("humidity is not known: taken as " +
                             std::to_string(static_cast<int>(kHumidityWhereUnknown.percent)) + " %");
  out.estimated = estimate(weather, weather.humidity.value_or(kHumidityWhereUnknown));
  found.number = number_words(*out.estimated);
  found.unused_to_heat = unused_to_heat(weather, table, found.cautions);
  found.band = caution(table, *out.estimated).at_least;
  out.verdict = take_band(table, std::move(found), age);
}

}  // namespace

HeatVerdict judge_heat(const Weather& weather, const BandTable& table, const MeasuredAge& age) {
  HeatVerdict out;
  if (weather.air && weather.humidity) out.heat_index = heat_index(to_fahrenheit(*weather.air), *weather.humidity);
  if (weather.wet_bulb_globe) {
    judge_measured(weather, table, age, out);
  } else if (!weather.air) {
    std::vector<std::string> cautions;
    const bool unused = unused_to_heat(weather, table, cautions);
    out.verdict =
        taken_for_second_band(table, Topic::kHeat, "nobody measured how warm it is", unused, std::move(cautions));
  } else if (*weather.air < kHeatJudgedFrom) {
    out.verdict = not_judged(Topic::kHeat, "air of " + in_both(*weather.air) + ": too cold for heat to be judged",
                             "own-judgement", age);
  } else {
    judge_estimated(weather, table, age, out);
  }
  return out;
}

}  // namespace lanework::care::environment
