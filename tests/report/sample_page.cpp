#include "tests/report/sample_page.h"

#include "tests/report/sample_charts.h"

namespace lanework::report {
namespace {

const char* const kLongName =
    "Under-13 and under-14 girls' development squad of the northern grounds, Tuesdays and every other Saturday";
const char* const kArabicName = "\u0646\u0627\u062F\u064A \u0627\u0644\u0646\u0648\u0631";
const char* const kAccentedName = "\u017B\u00F3\u0142te \u0141abędzie \u00C5ngstr\u00F6m";

Chart extreme(const std::string& id, const ChartData& data) {
  return {id, id, "What " + id + " shows.", data, table_of(id, data)};
}

Intervals many_intervals() {
  Intervals data = std::get<Intervals>(rates_of_squads(40).data);
  data.rows[0].label = kLongName;
  data.rows[1].label = kArabicName;
  data.rows[2].label = kAccentedName;
  data.rows[3].label = std::string(90, 'W');
  data.rows[4].high = std::nullopt;
  return data;
}

Funnel crowded_funnel() {
  Funnel data = std::get<Funnel>(squads_in_funnel(30).data);
  for (int at = 0; at < 6; ++at) data.points.push_back({std::string(kLongName) + " " + std::to_string(at), 13.2, 2.4});
  data.points.push_back({kArabicName, 6, 0});
  return data;
}

Shares odd_shares() {
  Shares data = std::get<Shares>(warm_ups_done().data);
  data.rows[0].label = kLongName;
  data.rows[1].label = kArabicName;
  for (Part& part : data.rows[2].parts) part.count = 0;
  for (Part& part : data.rows[3].parts) part.count = 1;
  data.rows[3].parts[0].count = 1000000;
  return data;
}

Section empty_charts() {
  return {"Empty",
          1,
          {extreme("empty-intervals", Intervals{"x", {}, std::nullopt, false}), extreme("empty-funnel", Funnel{}),
           extreme("empty-watch", Watch{}), extreme("empty-curve", Curve{}), extreme("empty-shares", Shares{}),
           extreme("empty-weeks", Weeks{})}};
}

Section single_charts() {
  return {"One row",
          1,
          {extreme("one-interval",
                   Intervals{"per 1000 hours", {{"Only one", 2, 0.5, 6, "2 (0.5 to 6)"}}, std::nullopt, false}),
           extreme("one-point", Funnel{"expected", "ratio", "95 in 100", "998 in 1000", {{"Only one", 2, 1.5}}, {}}),
           extreme("one-week", Watch{"events", "sum", {{"1 Sep", 3, 1, 2, true}}, 1}),
           extreme("one-value", Curve{"cm a year", "times", "no difference", {{5, 1.4, 0.8, 2.4}}, {}, false}),
           extreme("one-bar", Shares{{{"Only one", {{"done", 3}, {"not done", 0}}}}}),
           extreme("one-week-of-hours", Weeks{"hours", "injuries", {"training"}, {{"1 Sep", {12}, 1}}})}};
}

Section great_and_small() {
  Intervals wide{"a long title of an axis that is far wider than any phone and must be broken into lines to be read",
                 {},
                 Reference{1, "no change"},
                 true};
  wide.rows = {{"tiny", 3e-7, 1e-8, 2e-6, "0.0000003"},
               {"huge", 4.5e9, 1e8, 9e10, "4 500 000 000"},
               {"none seen", 0, 0, 5, "0 (0 to 5)"}};
  Weeks many{"hours", "injuries", {"training", "matches", "camps", "travel", "other"}, {}};
  for (int week = 0; week < 53; ++week)
    many.weeks.push_back({"week " + std::to_string(week + 1), {2e6, 1e6, 4e5, 3e5, 1e5}, week});
  Watch quiet{"events", "sum", {}, 5};
  for (int week = 0; week < 20; ++week) quiet.weeks.push_back({std::to_string(week + 1), 0, 0, 0, false});
  Curve steep{"value",
              "times",
              "no difference",
              {{0.001, 1e-4, 1e-6, 1e-2}, {0.002, 1, 0.5, 2}, {0.003, 2500, 1, 1e9}},
              {{0.001, 1e7}, {0.002, 1}},
              true};
  return {"Great and small",
          1,
          {extreme("wide-intervals", wide), extreme("many-weeks", many), extreme("quiet-watch", quiet),
           extreme("steep-curve", steep)}};
}

}  // namespace

Page sample_page() {
  Page page{"The season's report",       "Quillmere Juniors", "Season 2025/26",
            "Sunday 31 May 2026, 20:10", Language::kEnglish,  {}};
  page.sections = {
      {"In short",
       1,
       {Paragraph{"24 squads trained and played 17 870 player-hours in 36 weeks; hours are known for 93 in 100 "
                  "sessions. 56 injuries "
                  "cost at least one session: 3.1 per 1000 hours, between 2.4 and 4.1."},
        List{{"Too early to tell whether the new routine changed knee injuries: about 900 more hours are needed.",
              "Warm-ups were done by most players on three evenings in four. Where few did it, it was mostly on "
              "Fridays.",
              "Under 13 to under 14 had the highest rate, as last season."}},
        Notice{"Ankles need a look now.",
               "Since 22 February they were above expectation for five weeks. The strip behind the pavilion is uneven; "
               "two of "
               "three squads there reported it."}}},
      {"Hours and injuries", 1, {season_weeks(), rates_by_age()}},
      {"Squads",
       1,
       {Paragraph{"Small squads differ by chance alone. Both pictures say how much of that is to be expected."}}},
      {"Beside expectation", 2, {squads_in_funnel(23)}},
      {"Drawn in", 2, {rates_of_squads(24)}},
      {"Watched through the season", 1, {watched_weeks(), ratios_by_region()}},
      {"Growth", 1, {growth_curve()}},
      {"Warm-ups", 1, {warm_ups_done()}},
  };
  return page;
}

Page page_of_extremes() {
  Page page{"What is hard to draw",      "Quillmere Juniors", "Season 2025/26",
            "Sunday 31 May 2026, 20:10", Language::kEnglish,  {}};
  page.sections = {{"Many and long",
                    1,
                    {extreme("many-intervals", many_intervals()), extreme("crowded-funnel", crowded_funnel()),
                     extreme("odd-shares", odd_shares())}},
                   empty_charts(),
                   single_charts(),
                   great_and_small()};
  return page;
}

}  // namespace lanework::report
