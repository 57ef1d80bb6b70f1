#include "app/cli/evidence/season_page/season_page.h"

#include <utility>

#include "app/cli/evidence/season_page/numbers_at_the_end.h"
#include "app/cli/evidence/season_page/sections.h"
#include "core/base/date_words.h"

namespace lanework::cli {
namespace {

void add(report::Page& page, report::Section section) {
  if (!section.blocks.empty()) page.sections.push_back(std::move(section));
}
void add(report::Page& page, std::vector<report::Section> sections) {
  for (report::Section& section : sections) add(page, std::move(section));
}

}  // namespace

report::Page season_page(const SeasonPageMatter& matter) {
  const records::Period& period = matter.found->period;
  report::Page page;
  const evidence::NumberWords words = words_of(matter);
  page.language = words.language();
  page.title = words.say(matter.reader == findings::Reader::kBoard
                             ? Words{"Warm-ups and injuries: the season for the board",
                                     "Calentamientos y lesiones: la temporada, para la junta"}
                             : Words{"Warm-ups and injuries: the season", "Calentamientos y lesiones: la temporada"});
  page.club = matter.club;
  page.season = words.from_to(to_words(period.first, words.language()), to_words(period.last, words.language()));
  page.as_of = to_words(period.as_of, words.language());
  add(page, in_short(matter));
  add(page, completeness_section(matter));
  add(page, warm_up_sections(matter));
  add(page, often_section(matter));
  add(page, rate_sections(matter));
  add(page, prevalence_section(matter));
  add(page, squad_sections(matter));
  add(page, watch_section(matter));
  add(page, question_sections(matter));
  add(page, method_sections(matter));
  move_numbers_to_the_end(page);
  return page;
}

}  // namespace lanework::cli
