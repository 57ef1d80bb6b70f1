#include <cmath>
#include <optional>

#include "app/cli/evidence/season_page/sections.h"
#include "core/evidence/number_words.h"

namespace lanework::cli {
namespace {

using evidence::as_counted;
using evidence::in_digits;
using evidence::limits_words;

// A ratio with its limits, for chart and table.
struct RatioRow {
  std::string label;
  double ratio = 0;
  evidence::Interval limits;
};

std::vector<RatioRow> ratios(const findings::OftenOrNot& often) {
  const findings::StratifiedComparison& c = often.compared;
  std::vector<RatioRow> out = {{"all thrown together", c.crude, c.exact.limits}};
  out.push_back({"like with like", c.ratio->estimate, c.ratio->limits});
  if (c.ratio_by_squads)
    out.push_back({"like with like, squads counted as squads", c.ratio->estimate, c.ratio_by_squads->limits});
  if (often.whole_squads.ratio)
    out.push_back({"squads that were all season in one", often.whole_squads.ratio->ratio,
                   often.whole_squads.ratio->tested.limits});
  return out;
}

report::Chart ratio_chart(const findings::OftenOrNot& often) {
  report::Intervals data;
  data.x_title = "times the rate of weeks after fewer";
  data.log = true;
  data.reference = report::Reference{1, "no difference"};
  report::Table table{"Weeks after about two or more warm-ups a week by the others",
                      {{"", false}, {"times", true}, {"95 % limits", true}},
                      {}};
  for (const RatioRow& row : ratios(often)) {
    data.rows.push_back({row.label, row.ratio, row.limits.low,
                         std::isfinite(row.limits.high) ? std::optional(row.limits.high) : std::nullopt, ""});
    table.rows.push_back({row.label, in_digits(row.ratio), limits_words(row.limits)});
  }
  return {"often", "How many times the rate of weeks after fewer",
          "Each bar is as wide as the ratio is uncertain; the more of what differs is held alike, the better the row.",
          std::move(data), std::move(table)};
}

report::Table arms_table(const findings::OftenOrNot& often) {
  report::Table table{"The two kinds of weeks",
                      {{"warm-ups a week lately", false},
                       {"squads' weeks", true},
                       {"injuries", true},
                       {"hours", true},
                       {"in 1000 hours", true}},
                      {}};
  const auto row = [&](const char* label, int weeks, const evidence::Exposed& arm) {
    table.rows.push_back({label, std::to_string(weeks), std::to_string(arm.events), as_counted(std::round(arm.hours)),
                          arm.hours > 0 ? in_digits(1000 * static_cast<double>(arm.events) / arm.hours) : "-"});
  };
  row("1.5 or more", often.weeks_often, often.compared.one);
  row("fewer", often.weeks_seldom, often.compared.other);
  return table;
}

std::string left_out_words(const findings::OftenOrNot& often) {
  std::string out;
  if (often.weeks_unknown > 0)
    out +=
        std::to_string(often.weeks_unknown) + " squads' weeks are left out: nobody knows whether warm-ups were done. ";
  if (often.events_left_out > 0)
    out += std::to_string(often.events_left_out) +
           " injuries are left out: of such weeks, of weeks without hours, or of no known setting. ";
  out += "The time of the season is not held alike here; the model above does that.";
  return out;
}

std::vector<std::string> arm_cells(const char* label, const findings::TaughtArm& arm) {
  return {label, std::to_string(arm.squads), arm.squads > 0 ? in_digits(arm.warm_ups_a_week, 2) : "-",
          arm.squads_with_fidelity > 0 ? evidence::percent(arm.most_did) : "-"};
}

// '6 lower', of 100.
std::string lower_or_higher(double share) {
  return as_counted(std::round(100 * std::abs(share))) + (share < 0 ? " lower" : " higher");
}

}  // namespace

report::Section taught_section(const SeasonPageMatter& matter) {
  report::Section section{"Coaches who were taught", 2, {}};
  if (!matter.found->taught) return section;
  const findings::TaughtCoaches& t = *matter.found->taught;
  section.blocks = claim_paragraphs(matter, findings::ClaimKind::kTaught);
  report::Table table{"Squads by whether the coach was taught, means of squads",
                      {{"", false}, {"squads", true}, {"warm-ups a week", true}, {"of warm-ups, most did it", true}},
                      {}};
  table.rows.push_back(arm_cells("after being taught", t.taught));
  table.rows.push_back(arm_cells("without a day of teaching", t.not_taught));
  section.blocks.emplace_back(std::move(table));
  if (t.most_did)
    section.blocks.emplace_back(
        report::Paragraph{"Of warm-ups, the share in which most took part was " +
                          lower_or_higher(t.most_did->difference) + " of 100 after teaching (" +
                          lower_or_higher(t.most_did->limits.low) + " to " + lower_or_higher(t.most_did->limits.high) +
                          "). It is what coaches wrote down; no observer's visits are in these records."});
  if (t.change)
    section.blocks.emplace_back(report::Paragraph{
        "Squads with weeks before and after the teaching (" + std::to_string(t.squads_both) +
        "): " + in_digits(t.before, 2) + " warm-ups a week before, " + in_digits(t.after, 2) +
        " after, a difference of " + in_digits(t.change->difference, 2) + " (" + in_digits(t.change->limits.low, 2) +
        " to " + in_digits(t.change->limits.high, 2) + "). Warm-ups often wane through a season, taught or not."});
  return section;
}

report::Section often_section(const SeasonPageMatter& matter) {
  const findings::OftenOrNot& often = matter.found->often;
  report::Section section{"About two or more warm-ups a week against fewer", 2,
                          claim_paragraphs(matter, findings::ClaimKind::kOften)};
  if (section.blocks.empty() || !often.compared.ratio) return section;
  section.blocks.emplace_back(ratio_chart(often));
  if (matter.reader == findings::Reader::kBoard) return section;
  section.blocks.emplace_back(arms_table(often));
  if (often.needed)
    section.blocks.emplace_back(
        report::Paragraph{"In squads' seasons of " + evidence::hours_words(std::round(often.hours_a_squad_season)) +
                          ", warmed up that often instead of less, if it were cause and effect: " +
                          evidence::needed_words(*often.needed, {"injury", "injuries"}, "such seasons") + "."});
  section.blocks.emplace_back(report::Paragraph{left_out_words(often)});
  return section;
}

}  // namespace lanework::cli
