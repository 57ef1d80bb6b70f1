#include <algorithm>

#include "app/cli/evidence/season_page/sections.h"
#include "core/evidence/number_words.h"

namespace lanework::cli {
namespace {

std::string share(double part, double whole) {
  return whole > 0 ? evidence::as_counted(std::round(1000 * part / whole) / 10) + " %" : "-";
}

std::string name_of(const records::Season& season, std::size_t squad) {
  const records::SquadRecord& record = season.squads[squad];
  return record.name.empty() ? record.id : record.name;
}

report::Table hours_table(const records::Completeness& c) {
  const char* const kLabels[] = {"counted on the day", "usual minutes", "usual players", "usual minutes and players"};
  report::Table table{
      "How the hours were come by", {{"", false}, {"sessions", true}, {"hours", true}, {"share", true}}, {}};
  for (std::size_t i = 0; i < c.hours_by_default.size(); ++i) {
    const double hours = static_cast<double>(c.hours_by_default[i].count) / 60;
    table.rows.push_back({kLabels[i], std::to_string(c.sessions_by_default[i]), evidence::as_counted(std::round(hours)),
                          share(hours, static_cast<double>(c.hours.count) / 60)});
  }
  return table;
}

report::Table fields_table(const records::Completeness& c) {
  report::Table table{"Of how many injuries a field is known", {{"", false}, {"known", true}, {"share", true}}, {}};
  for (const records::FieldKnown& field : c.fields)
    table.rows.push_back({field.name, std::to_string(field.known), share(field.known, c.diagnoses)});
  return table;
}

report::Table weeks_table(const SeasonPageMatter& matter) {
  const records::Completeness& c = matter.found->completeness;
  report::Table table{"Weeks with hours on record", {{"squad", false}, {"weeks", true}, {"of", true}}, {}};
  for (std::size_t squad = 0; squad < c.weeks.size(); ++squad)
    table.rows.push_back({name_of(*matter.season, squad), std::to_string(c.weeks[squad].with_rows),
                          std::to_string(c.weeks[squad].expected)});
  return table;
}

// So many questions are printed whole.
constexpr std::size_t kMostQuestions = 40;

}  // namespace

std::vector<report::Section> completeness_sections(const SeasonPageMatter& matter) {
  const records::Completeness& c = matter.found->completeness;
  report::Section section{"How complete the records are", 1, {}};
  section.blocks.emplace_back(hours_table(c));
  if (c.diagnoses > 0) section.blocks.emplace_back(fields_table(c));
  if (matter.reader == findings::Reader::kBoard) return {std::move(section)};
  section.blocks.emplace_back(weeks_table(matter));
  report::Section questions{"Questions about rows", 2, {}};
  if (c.questions.empty()) questions.blocks.emplace_back(report::Paragraph{"None."});
  report::List list;
  for (std::size_t i = 0; i < std::min(kMostQuestions, c.questions.size()); ++i)
    list.items.push_back(records::to_line(c.questions[i]));
  if (c.questions.size() > kMostQuestions)
    list.items.push_back(std::to_string(c.questions.size() - kMostQuestions) +
                         " more: 'lanework evidence import --dry-run' lists them all");
  if (!list.items.empty()) questions.blocks.emplace_back(std::move(list));
  return {std::move(section), std::move(questions)};
}

}  // namespace lanework::cli
