#include <algorithm>
#include <cmath>

#include "app/cli/evidence/season_page/sections.h"
#include "core/evidence/number_words.h"

namespace lanework::cli {
namespace {

std::string share(double part, double whole) {
  return whole > 0 ? evidence::as_counted(std::round(1000 * part / whole) / 10) + " %" : "-";
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
    table.rows.push_back({matter.season->squads[squad].shown(), std::to_string(c.weeks[squad].with_rows),
                          std::to_string(c.weeks[squad].expected)});
  return table;
}

// So many questions are printed whole.
constexpr std::size_t kMostQuestions = 40;

}  // namespace

report::Section completeness_section(const SeasonPageMatter& matter) {
  const records::Completeness& c = matter.found->completeness;
  report::Section section{"How complete the records are", 1, {}};
  if (!matter.left_out.empty()) section.blocks.emplace_back(report::Paragraph{matter.left_out});
  section.blocks.emplace_back(hours_table(c));
  if (c.diagnoses > 0) section.blocks.emplace_back(fields_table(c));
  return section;
}

std::vector<report::Section> question_sections(const SeasonPageMatter& matter) {
  if (matter.reader == findings::Reader::kBoard) return {};
  const records::Completeness& c = matter.found->completeness;
  report::Section section{"What somebody should look at", 1, {}};
  section.blocks.emplace_back(weeks_table(matter));
  report::List list;
  std::size_t more = 0;
  for (const records::Question& question : c.questions) {
    // The table has these.
    if (question.kind == records::QuestionKind::kWeeksWithoutRows) continue;
    if (list.items.size() < kMostQuestions) {
      list.items.push_back(matter.of_ledger ? question.sentence : records::to_line(question));
    } else {
      ++more;
    }
  }
  if (more > 0)
    list.items.push_back(std::to_string(more) +
                         (matter.of_ledger ? " more" : " more: 'lanework evidence import --dry-run' lists them all"));
  if (!list.items.empty()) section.blocks.emplace_back(std::move(list));
  return {std::move(section)};
}

}  // namespace lanework::cli
