#include <array>
#include <cmath>

#include "app/cli/evidence/season_page/sections.h"

namespace lanework::cli {
namespace {

using evidence::NumberWords;

// '2026-03'.
std::string month_of(Date day) { return to_iso(day).substr(0, 7); }

report::Chart months_chart(const findings::Prevalence& prevalence, const NumberWords& words) {
  report::Intervals data;
  data.x_title = words.say(
      Words{"players out with an injury on a day, of 100", "jugadores de baja por lesión en un día, de cada 100"});
  data.reference = report::Reference{100 * prevalence.season.share(), words.say(Words{"season", "temporada"})};
  report::Table table{
      words.say(Words{"Players out with an injury, month by month", "Jugadores de baja por lesión, mes a mes"}),
      {{words.say(Words{"month", "mes"}), false},
       {words.say(Words{"days out", "días de baja"}), true},
       {words.say(Words{"days on the books", "días de inscripción"}), true},
       {words.say(Words{"of 100", "de cada 100"}), true}},
      {}};
  for (const findings::ShareOut& month : prevalence.months) {
    const std::string of_100 = words.in_digits(100 * month.share(), 2);
    table.rows.push_back({month_of(month.from), std::to_string(month.days_out), std::to_string(month.days_on_books),
                          month.limits ? of_100 + " (" +
                                             words.from_to(words.in_digits(100 * month.limits->low, 2),
                                                           words.in_digits(100 * month.limits->high, 2)) +
                                             ")"
                                       : of_100});
    if (month.limits)
      data.rows.push_back(
          {month_of(month.from), 100 * month.share(), 100 * month.limits->low, 100 * month.limits->high, ""});
  }
  return {
      "prevalence", words.say(Words{"Players out with an injury", "Jugadores de baja por lesión"}),
      words.say(Words{
          "Each bar is as wide as a month's share is uncertain; months in which hardly anybody was out have no bar.",
          "Cada barra es tan ancha como incierta es la proporción del mes; los meses en que casi nadie estuvo de baja "
          "no tienen barra."}),
      std::move(data), std::move(table)};
}

}  // namespace

report::Section prevalence_section(const SeasonPageMatter& matter) {
  const NumberWords words = words_of(matter);
  report::Section section{words.say(Words{"Out with an injury on a day", "De baja por lesión en un día"}), 2,
                          claim_paragraphs(matter, findings::ClaimKind::kPrevalence)};
  // A month's days out may be those of one player.
  if (section.blocks.empty() || matter.reader == findings::Reader::kBoard ||
      matter.found->prevalence->season.days_out == 0)
    return section;
  section.blocks.emplace_back(months_chart(*matter.found->prevalence, words));
  return section;
}

}  // namespace lanework::cli
