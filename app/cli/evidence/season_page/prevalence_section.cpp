#include <array>
#include <cmath>

#include "app/cli/evidence/season_page/sections.h"
#include "core/evidence/number_words.h"

namespace lanework::cli {
namespace {

using evidence::in_digits;

// '2026-03'.
std::string month_of(Date day) { return to_iso(day).substr(0, 7); }

report::Chart months_chart(const findings::Prevalence& prevalence) {
  report::Intervals data;
  data.x_title = "players out with an injury on a day, of 100";
  data.reference = report::Reference{100 * prevalence.season.share(), "season"};
  report::Table table{"Players out with an injury, month by month",
                      {{"month", false}, {"days out", true}, {"days on the books", true}, {"of 100", true}},
                      {}};
  for (const findings::ShareOut& month : prevalence.months) {
    const std::string of_100 = in_digits(100 * month.share(), 2);
    table.rows.push_back({month_of(month.from), std::to_string(month.days_out), std::to_string(month.days_on_books),
                          month.limits ? of_100 + " (" + in_digits(100 * month.limits->low, 2) + " to " +
                                             in_digits(100 * month.limits->high, 2) + ")"
                                       : of_100});
    if (month.limits)
      data.rows.push_back(
          {month_of(month.from), 100 * month.share(), 100 * month.limits->low, 100 * month.limits->high, ""});
  }
  return {"prevalence", "Players out with an injury",
          "Each bar is as wide as a month's share is uncertain; months in which hardly anybody was out have no bar.",
          std::move(data), std::move(table)};
}

}  // namespace

report::Section prevalence_section(const SeasonPageMatter& matter) {
  report::Section section{"Out with an injury on a day", 2, claim_paragraphs(matter, findings::ClaimKind::kPrevalence)};
  // A month's days out may be those of one player.
  if (section.blocks.empty() || matter.reader == findings::Reader::kBoard ||
      matter.found->prevalence->season.days_out == 0)
    return section;
  section.blocks.emplace_back(months_chart(*matter.found->prevalence));
  return section;
}

}  // namespace lanework::cli
