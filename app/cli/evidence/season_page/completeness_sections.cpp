#include <algorithm>
#include <cmath>

#include "app/cli/evidence/season_page/sections.h"

namespace lanework::cli {
namespace {

using evidence::NumberWords;

std::string share(double part, double whole, const NumberWords& words) {
  constexpr double kTenths = 10;
  constexpr double kThousand = 1000;
  return whole > 0 ? words.as_counted(std::round(kThousand * part / whole) / kTenths) + " %" : "-";
}

report::Table hours_table(const records::Completeness& c, const NumberWords& words) {
  static constexpr std::array<Words, 4> kLabels = {{{"counted on the day", "contadas ese día"},
                                                    {"usual minutes", "minutos habituales"},
                                                    {"usual players", "jugadores habituales"},
                                                    {"usual minutes and players", "minutos y jugadores habituales"}}};
  report::Table table{words.say(Words{"How the hours were come by", "De dónde salen las horas"}),
                      {{"", false},
                       {words.say(Words{"sessions", "sesiones"}), true},
                       {words.say(Words{"hours", "horas"}), true},
                       {words.say(Words{"share", "proporción"}), true}},
                      {}};
  for (std::size_t i = 0; i < c.hours_by_default.size(); ++i) {
    const double hours = static_cast<double>(c.hours_by_default[i].count) / 60;
    table.rows.push_back({words.say(kLabels.at(i)), std::to_string(c.sessions_by_default[i]),
                          words.as_counted(std::round(hours)),
                          share(hours, static_cast<double>(c.hours.count) / 60, words)});
  }
  return table;
}

report::Table fields_table(const records::Completeness& c, const NumberWords& words) {
  report::Table table{
      words.say(Words{"Of how many injuries a field is known", "De cuántas lesiones se sabe cada dato"}),
      {{"", false}, {words.say(Words{"known", "se sabe"}), true}, {words.say(Words{"share", "proporción"}), true}},
      {}};
  for (const records::FieldKnown& field : c.fields)
    table.rows.push_back({field.name, std::to_string(field.known), share(field.known, c.diagnoses, words)});
  return table;
}

report::Table weeks_table(const SeasonPageMatter& matter, const NumberWords& words) {
  const records::Completeness& c = matter.found->completeness;
  report::Table table{words.say(Words{"Weeks with hours on record", "Semanas con horas anotadas"}),
                      {{words.say(Words{"squad", "equipo"}), false},
                       {words.say(Words{"weeks", "semanas"}), true},
                       {words.say(Words{"of", "de"}), true}},
                      {}};
  for (std::size_t squad = 0; squad < c.weeks.size(); ++squad)
    table.rows.push_back({matter.season->squads[squad].shown(), std::to_string(c.weeks[squad].with_rows),
                          std::to_string(c.weeks[squad].expected)});
  return table;
}

// So many questions are printed whole.
constexpr std::size_t kMostQuestions = 40;

report::List questions_list(const SeasonPageMatter& matter, const NumberWords& words) {
  report::List list;
  std::size_t more = 0;
  for (const records::Question& question : matter.found->completeness.questions) {
    // The table has these.
    if (question.kind == records::QuestionKind::kWeeksWithoutRows) continue;
    if (list.items.size() < kMostQuestions) {
      list.items.push_back(matter.of_ledger ? question.sentence : records::to_line(question, words.language()));
    } else {
      ++more;
    }
  }
  if (more == 0) return list;
  const Sentence<1> rest = matter.of_ledger
                               ? Sentence<1>{"{} more", "{} más"}
                               : Sentence<1>{"{} more: 'lanework evidence import --dry-run' lists them all",
                                             "{} más: «lanework evidence import --dry-run» las enumera todas"};
  list.items.push_back(words.say(rest, more));
  return list;
}

}  // namespace

report::Section completeness_section(const SeasonPageMatter& matter) {
  const NumberWords words = words_of(matter);
  const records::Completeness& c = matter.found->completeness;
  report::Section section{
      words.say(Words{"How complete the records are", "Hasta qué punto están completos los registros"}), 1, {}};
  if (!matter.left_out.empty()) section.blocks.emplace_back(report::Paragraph{matter.left_out});
  section.blocks.emplace_back(hours_table(c, words));
  if (c.diagnoses > 0) section.blocks.emplace_back(fields_table(c, words));
  return section;
}

std::vector<report::Section> question_sections(const SeasonPageMatter& matter) {
  if (matter.reader == findings::Reader::kBoard) return {};
  const NumberWords words = words_of(matter);
  report::Section section{words.say(Words{"What somebody should look at", "Qué debería mirar alguien"}), 1, {}};
  section.blocks.emplace_back(weeks_table(matter, words));
  report::List list = questions_list(matter, words);
  if (!list.items.empty()) section.blocks.emplace_back(std::move(list));
  return {std::move(section)};
}

}  // namespace lanework::cli
