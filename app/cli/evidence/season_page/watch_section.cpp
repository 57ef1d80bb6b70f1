#include "app/cli/evidence/season_page/sections.h"
#include "core/evidence/number_words.h"

namespace lanework::cli {

report::Section watch_section(const SeasonPageMatter& matter) {
  report::Section section{"Watched week by week", 1, {}};
  if (!matter.found->watched || matter.reader == findings::Reader::kBoard) return section;
  const findings::WatchedSeason& watched = *matter.found->watched;
  report::Watch data;
  data.events_title = "injuries a week; the stroke: expected";
  data.sum_title = "sum of what is above expectation";
  data.decision = static_cast<double>(watched.plan.decision) / watched.plan.parts;
  report::Table table{
      "Weeks, watched", {{"week from", false}, {"injuries", true}, {"expected", true}, {"sum", true}, {"", false}}, {}};
  for (std::size_t i = 0; i < watched.weeks.size(); ++i) {
    const evidence::WatchedWeek& week = watched.weeks[i];
    const std::string label = to_iso(records::monday_of(matter.found->period, static_cast<int>(i)));
    data.weeks.push_back({label, static_cast<double>(week.events), week.expected, week.sum, week.alarm});
    table.rows.push_back({label, std::to_string(week.events), evidence::in_digits(week.expected),
                          evidence::in_digits(week.sum), week.alarm ? "look into it" : ""});
  }
  section.blocks.emplace_back(
      report::Paragraph{"The usual rate is " + evidence::in_digits(1000 * watched.plan.usual_rate) +
                        " in 1000 hours. The sum rises with every injury more than would be usual and falls in quiet "
                        "weeks; when it reaches "
                        "its limit it says: look into it. Where nothing has changed, that happens " +
                        evidence::in_digits(watched.false_alarms, 2) + " times in a season like this one by chance."});
  section.blocks.emplace_back(report::Chart{"watch", "Injuries week by week against the usual rate",
                                            "Above, the sum and the limit at which it says 'look into it'; below, each "
                                            "week's injuries and what was expected.",
                                            std::move(data), std::move(table)});
  return section;
}

}  // namespace lanework::cli
