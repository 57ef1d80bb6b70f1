#include "tests/report/sample_charts.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/date.h"
#include "tests/report/number_words.h"

namespace lanework::report {
namespace {

// Invented numbers that look as if drawn at random and are the same every time.
int wobble(int at, int among) {
  const unsigned mixed = (static_cast<unsigned>(at) + 1) * 2654435761U;
  return static_cast<int>((mixed >> 15) % static_cast<unsigned>(among));
}

IntervalRow rate(const std::string& label, double events, double hours) {
  const double per = 1000 / hours;
  const double low = events > 0 ? events * std::pow(1 - 1 / (9 * events) - 1.96 / (3 * std::sqrt(events)), 3) : 0;
  const double more = events + 1;
  const double high = more * std::pow(1 - 1 / (9 * more) + 1.96 / (3 * std::sqrt(more)), 3);
  return {label, events * per, low * per, high * per, with_interval(events * per, low * per, high * per, 1)};
}

const std::array<const char*, 12> kBirds = {"Kestrels", "Harriers", "Merlins", "Kites",  "Ospreys", "Hobbies",
                                            "Buzzards", "Swifts",   "Plovers", "Herons", "Curlews", "Martins"};

std::string squad(int at) {
  return "Under-" + std::to_string(9 + at % 10) + " " + kBirds[static_cast<std::size_t>(at) % kBirds.size()];
}

std::string week_label(int week) {
  static const std::array<const char*, 9> kMonths = {"Sep", "Oct", "Nov", "Dec", "Jan", "Feb", "Mar", "Apr", "May"};
  static const std::array<int, 9> kDays = {30, 31, 30, 31, 31, 28, 31, 30, 31};
  int day = 1 + 7 * week;
  std::size_t month = 0;
  while (day > kDays[month]) day -= kDays[month++];
  return std::to_string(day) + " " + kMonths[month];
}

Chart chart(const std::string& id, const std::string& title, const std::string& says, const ChartData& data) {
  return {id, title, says, data, table_of(title, data)};
}

}  // namespace

Chart rates_by_age() {
  Intervals data{"Injuries with time lost per 1000 hours", {}, Reference{3.1, "whole club 3.1"}, false};
  data.rows = {rate("Under 9 to under 10", 3, 2140), rate("Under 11 to under 12", 9, 3480),
               rate("Under 13 to under 14", 21, 4920), rate("Under 15 to under 16", 17, 4310),
               rate("Under 17 to under 19", 6, 3020)};
  return chart(
      "rates-by-age", "Injuries by age",
      "Injuries per 1000 hours in five age bands, each with its 95 % interval: highest in under 13 to under 14, with "
      "intervals that overlap those of the bands beside it.",
      data);
}

Chart rates_of_squads(int squads) {
  Intervals data{"Injuries with time lost per 1000 hours, drawn in towards the club's own rate",
                 {},
                 Reference{3.1, "whole club 3.1"},
                 false};
  for (int at = 0; at < squads; ++at) {
    data.rows.push_back(rate(squad(at), 2 + wobble(at, 9), 1100 + 45 * wobble(at, 31)));
  }
  std::sort(data.rows.begin(), data.rows.end(),
            [](const IntervalRow& one, const IntervalRow& other) { return one.estimate > other.estimate; });
  return chart("rates-of-squads", "Every squad, drawn in",
               "Injuries per 1000 hours of " + std::to_string(squads) +
                   " squads, drawn in towards the whole club: every interval reaches the club's rate or nearly so.",
               data);
}

Chart ratios_by_region() {
  Intervals data{"Rate this season by rate last season", {}, Reference{1, "no change"}, true};
  data.rows = {{"Ankle", 0.71, 0.41, 1.21, "0.71 (0.41 to 1.21)"},
               {"Knee", 0.88, 0.44, 1.74, "0.88 (0.44 to 1.74)"},
               {"Hip and groin", 1.34, 0.52, 3.6, "1.34 (0.52 to 3.60)"},
               {"Hamstring", 0.5, 0.09, 2.2, "0.50 (0.09 to 2.20)"},
               {"Head", 2, 0.18, std::nullopt, "2.00 (0.18, no upper)"}};
  return chart(
      "ratios-by-region", "This season beside the last",
      "Ratios of this season's rates to last season's for five regions of the body: every interval holds 1, so no "
      "change is shown.",
      data);
}

Chart season_weeks() {
  Weeks data{"Player-hours a week", "Injuries with time lost, one mark each", {"training", "matches"}, {}};
  for (int week = 0; week < 36; ++week) {
    const bool holidays = week == 7 || week == 16 || week == 17 || week == 24 || week == 31;
    const double share = holidays ? 0.12 : 0.8 + 0.02 * wobble(week, 13);
    data.weeks.push_back({week_label(week),
                          {std::round(410 * share), holidays ? 0 : std::round(96 * share)},
                          holidays ? 0 : std::max(0, wobble(week, 7) - 3) + (week == 21 ? 3 : 0)});
  }
  return chart(
      "season-weeks", "The season week by week",
      "Hours of training and matches in 36 weeks, with a mark for each injury; five weeks of holidays have few hours "
      "and no injury.",
      data);
}

Chart watched_weeks() {
  Watch data{"Ankle injuries a week (stroke: expected)", "Gathered above expectation", {}, 4};
  double sum = 0;
  for (int week = 0; week < 36; ++week) {
    const double expected = week % 9 == 7 ? 0.2 : 0.9;
    const double events = week >= 25 && week < 30 ? 2 + wobble(week, 2)
                          : wobble(week, 3) == 0  ? 1
                          : wobble(week, 5) == 1  ? 2
                                                  : 0;
    sum = std::max(0.0, sum + events - expected - 0.35);
    data.weeks.push_back({week_label(week), events, expected, sum, sum > data.decision});
  }
  return chart(
      "watched-weeks", "Ankles, watched week by week",
      "The sum of ankle injuries above expectation passes its decision limit in spring, and an alarm was raised.",
      data);
}

Chart squads_in_funnel(int squads) {
  Funnel data{"Injuries expected from hours, age and setting", "Seen by expected", "95 in 100", "998 in 1000", {}, {}};
  for (int at = 0; at < squads; ++at) {
    const double expected = 1.2 + 0.55 * wobble(at, 21);
    const double spread = (wobble(at + 3, 17) - 8) / 8.0;
    data.points.push_back({squad(at), expected, std::max(0.0, 1 + 1.6 * spread / std::sqrt(expected))});
  }
  data.points.push_back({"Under-14 Merlins", 7.9, 2.15});
  for (double expected = 0.5; expected <= 14; expected += 0.25) {
    const double inner = 1.96 / std::sqrt(expected);
    const double outer = 3.09 / std::sqrt(expected);
    data.lines.push_back({expected, std::max(0.0, 1 - inner), 1 + inner, std::max(0.0, 1 - outer), 1 + outer});
  }
  return chart(
      "squads-in-funnel", "Squads beside what was to be expected",
      "Injuries seen by injuries expected for every squad, between the lines of chance: one squad lies outside the "
      "outer line.",
      data);
}

Chart growth_curve() {
  Curve data{"Growth in centimetres a year", "Rate, times that at 5 cm a year", "no difference", {}, {}, false};
  for (double growth = 0.5; growth <= 12; growth += 0.5) {
    const double times = 1 + 0.011 * (growth - 5) * std::abs(growth - 5) + 0.02 * (growth - 5);
    const double wide = 0.05 + 0.014 * (growth - 5) * (growth - 5);
    data.points.push_back({growth, times, times / (1 + wide), times * (1 + wide)});
  }
  const std::array<double, 12> hours = {420, 910, 1650, 2300, 2710, 2560, 1980, 1320, 840, 430, 190, 60};
  for (std::size_t at = 0; at < hours.size(); ++at) data.hours.push_back({static_cast<double>(at) + 0.5, hours[at]});
  return chart(
      "growth-curve", "Growth and injuries",
      "The rate of injuries rises with the speed of growth, with a band that is wide above 9 cm a year, where few "
      "hours were seen.",
      data);
}

Chart warm_ups_done() {
  Shares data;
  const std::array<const char*, 5> names = {"most did it", "half did", "few did", "not done", "not known"};
  for (int at = 0; at < 8; ++at) {
    const std::array<int, 5> counts = {24 + wobble(at, 23), 6 + wobble(at, 11), wobble(at, 7), wobble(at, 5),
                                       2 + 3 * wobble(at, 4)};
    SharesRow row{squad(at), {}};
    for (std::size_t part = 0; part < names.size(); ++part) row.parts.push_back({names[part], counts[part]});
    data.rows.push_back(row);
  }
  return chart(
      "warm-ups-done", "Warm-ups done",
      "Of the warm-ups planned for eight squads, most were done by most players; for one in ten there is no word.",
      data);
}

}  // namespace lanework::report
