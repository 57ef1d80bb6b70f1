#include <cmath>

#include "app/cli/evidence/season_page/sections.h"
#include "core/evidence/number_words.h"
#include "core/findings/small_cells.h"

namespace lanework::cli {
namespace {

using evidence::as_counted;
using evidence::in_digits;
using evidence::limits_words;
using findings::RateRow;
using findings::RateTable;

constexpr const char* kWithheld = "fewer than 5";

std::vector<bool> withheld(const RateTable& table, findings::Reader reader) {
  std::vector<int> counts;
  for (const RateRow& row : table.rows) counts.push_back(row.injuries);
  return findings::withheld_rows(counts, reader);
}

std::string burden_words(const RateRow& row) {
  if (!row.burden || row.injuries == 0) return "-";
  const evidence::Burden& burden = *row.burden;
  const bool useless = !std::isfinite(burden.limits.high) || burden.limits.high > 20 * burden.days_an_hour;
  return in_digits(1000 * burden.days_an_hour) + " (" +
         (useless ? in_digits(1000 * burden.limits.low) + " and upwards" : limits_words(burden.limits, 1000)) + ")";
}

// open: how many of the injuries are open is told.
std::vector<std::string> cells(const RateRow& row, bool hidden, bool open, bool rates_stand) {
  if (hidden) return {row.label, kWithheld, as_counted(std::round(row.hours)), "-", "-", "-", "-"};
  const bool rate = row.hours > 0 && rates_stand;
  return {row.label,
          std::to_string(row.injuries) + (open && row.open > 0 ? " (" + std::to_string(row.open) + " open)" : ""),
          row.hours > 0 ? as_counted(std::round(row.hours)) : "not known",
          rate ? in_digits(1000 * row.per_hour()) + " (" + limits_words(row.limits, 1000) + ")" : "-",
          as_counted(row.days),
          row.injuries > 0 ? as_counted(row.median_days) : "-",
          rates_stand ? burden_words(row) : "-"};
}

report::Table table_of(const RateTable& rates, const std::string& caption, findings::Reader reader) {
  report::Table table{caption,
                      {{"", false},
                       {rates.of_diagnoses ? "diagnoses" : "injuries", true},
                       {"hours", true},
                       {"in 1000 hours", true},
                       {"days lost", true},
                       {"median days", true},
                       {"days in 1000 hours", true}},
                      {}};
  const std::vector<bool> hidden = withheld(rates, reader);
  // The board is told how many are open in all, not of which kind: a small count could be had by subtraction.
  const bool open = reader == findings::Reader::kLead ||
                    (rates.by == findings::GroupBy::kWhole && !findings::is_withheld(reader, rates.rows.front().open));
  for (std::size_t i = 0; i < rates.rows.size(); ++i) {
    table.rows.push_back(cells(rates.rows[i], hidden[i], open, rates.rates_stand));
  }
  return table;
}

report::Intervals intervals_of(const RateTable& rates, findings::Reader reader) {
  report::Intervals out;
  out.x_title = rates.of_diagnoses ? "diagnoses in 1000 player-hours" : "injuries in 1000 player-hours";
  const std::vector<bool> hidden = withheld(rates, reader);
  for (std::size_t i = 0; i < rates.rows.size(); ++i) {
    const RateRow& row = rates.rows[i];
    if (hidden[i] || row.hours <= 0) continue;
    out.rows.push_back({row.label, 1000 * row.per_hour(), 1000 * row.limits.low, 1000 * row.limits.high,
                        std::to_string(row.injuries)});
  }
  return out;
}

report::Chart chart_of(const std::string& id, const std::string& title, const RateTable& rates, const RateRow& whole,
                       findings::Reader reader) {
  report::Intervals data = intervals_of(rates, reader);
  if (!rates.of_diagnoses && whole.injuries > 0 && whole.hours > 0)
    data.reference = report::Reference{1000 * whole.per_hour(), "all"};
  return {id, title,
          "Each bar is as wide as the rate is uncertain (95 % exact limits); the stroke in it is what was seen.",
          std::move(data), table_of(rates, title, reader)};
}

// The board is told that they are many, not how many.
report::Paragraph no_rates(const std::string& title, const RateTable& rates, findings::Reader reader) {
  const std::string what = rates.of_diagnoses ? "diagnoses" : "injuries";
  const std::string how_many = reader == findings::Reader::kLead ? std::to_string(rates.unknown) + " of " +
                                                                       std::to_string(rates.injuries) + " " + what
                                                                 : "more than a tenth of the " + what;
  return {title + ": for " + how_many +
          " it is not known where they belong, so no rate of a group is given. It would be too low."};
}

report::Table severity_of(const findings::SeasonFindings& found, findings::Reader reader) {
  report::Table table{"Injuries by the days they cost", {{"", false}, {"injuries", true}}, {}};
  const bool open = reader == findings::Reader::kLead;
  if (open) table.columns.push_back({"of them open", true});
  std::vector<int> counts;
  for (const findings::SeverityRow& row : found.severity) counts.push_back(row.injuries);
  const std::vector<bool> hidden = findings::withheld_rows(counts, reader);
  for (std::size_t i = 0; i < counts.size(); ++i) {
    const findings::SeverityRow& row = found.severity[i];
    table.rows.push_back({row.label, hidden[i] ? kWithheld : std::to_string(row.injuries)});
    if (open) table.rows.back().push_back(std::to_string(row.open));
  }
  return table;
}

report::Chart weeks_chart(const SeasonPageMatter& matter) {
  report::Weeks data{"player-hours", "injuries", {"training", "match"}, {}};
  report::Table table{"Hours and injuries week by week",
                      {{"week from", false}, {"training", true}, {"match", true}, {"injuries", true}},
                      {}};
  for (const findings::SeasonWeek& week : matter.found->weeks) {
    const std::string label = to_iso(week.monday);
    data.weeks.push_back({label, {week.training_hours, week.match_hours}, week.injuries});
    table.rows.push_back({label, as_counted(std::round(week.training_hours)), as_counted(std::round(week.match_hours)),
                          std::to_string(week.injuries)});
  }
  return {"weeks", "The season week by week",
          "Bars are player-hours of training and matches, marks above them injuries.", std::move(data),
          std::move(table)};
}

}  // namespace

std::vector<report::Section> rate_sections(const SeasonPageMatter& matter) {
  const findings::SeasonFindings& found = *matter.found;
  const RateRow& whole = found.whole.rows.front();
  const auto put = [&](report::Section& section, const char* title, const RateTable& rates, const char* chart_id) {
    if (!rates.rates_stand) section.blocks.emplace_back(no_rates(title, rates, matter.reader));
    if (chart_id != nullptr && rates.rates_stand) {
      section.blocks.emplace_back(chart_of(chart_id, title, rates, whole, matter.reader));
    } else {
      section.blocks.emplace_back(table_of(rates, title, matter.reader));
    }
  };
  report::Section all{"Injuries", 1, {}};
  if (matter.reader == findings::Reader::kLead) all.blocks.emplace_back(weeks_chart(matter));
  all.blocks.emplace_back(table_of(found.whole, "All injuries", matter.reader));
  all.blocks.emplace_back(severity_of(found, matter.reader));
  if (whole.injuries == 0) return {std::move(all)};
  report::Section where{"When and to whom", 2, {}};
  put(where, "Training and matches", found.settings, "settings");
  put(where, "Age bands", found.ages, "ages");
  put(where, "Girls and boys", found.sexes, nullptr);
  report::Section what{"What kind", 2, {}};
  put(what, "Body regions", found.regions, "regions");
  put(what, "Tissues", found.tissues, nullptr);
  put(what, "How they began", found.onsets, nullptr);
  put(what, "Contact", found.contacts, nullptr);
  put(what, "First and recurrent ones", found.histories, "histories");
  // Beside the table above it, its rows would give small counts away.
  if (matter.reader == findings::Reader::kLead) put(what, "First and later ones", found.recurrences, nullptr);
  return {std::move(all), std::move(where), std::move(what)};
}

}  // namespace lanework::cli
