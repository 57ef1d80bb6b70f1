#include <utility>

#include "app/cli/evidence/season_page/sections.h"
#include "core/evidence/number_words.h"
#include "core/findings/reporting_items.h"

namespace lanework::cli {

std::vector<report::Section> method_sections(const SeasonPageMatter& matter) {
  report::Section methods{"How the figures were made", 1, {}};
  report::List list;
  const auto say = [&](std::string text) { list.items.push_back(std::move(text)); };
  say("Terms, days lost and events as in the 2020 consensus on recording injury in sport (doi "
      "10.1136/bjsports-2019-101969): neither the day of the injury nor that of return counts; an event of several "
      "diagnoses counts once.");
  say("Hours: minutes times players there; in matches, minutes times players on the field. Where a row leaves them "
      "out, "
      "the squad's usual ones stand in, and are counted above.");
  say("Limits of rates are exact (Garwood) at " + evidence::level_words(matter.found->asked.level) +
      "; those of ratios exact conditional, each tail by itself.");
  say("Days in 1000 hours: the wider of a gamma and a log-normal interval; where a few very long injuries are all "
      "there "
      "is, the true figure lies outside more often than said.");
  say("Squads drawn in: gamma-Poisson, all gammas that may be weighed by their likelihood.");
  say("Warm-ups: one that most did counts whole, half did 0.5, few did 0.2 (own judgement).");
  say("Often or seldom warmed up: like with like by Mantel and Haenszel; the limits are at each end the wider of "
      "theirs "
      "and of those with each squad left out in turn (own judgement: 'about two' is 1.5 or more).");
  say("Out with an injury: days lost by days on the books; limits by leaving out each squad in turn, or each player "
      "where squads are few. Injuries from before the season are not on record.");
  methods.blocks.emplace_back(std::move(list));
  report::Section items{"What a report should tell, by the consensus' checklist", 2, {}};
  report::Table table{"Items of the checklist in our own words; those without a number are recalled, not read",
                      {{"item", false}, {"number", false}, {"told", false}, {"where, or what is wanting", false}},
                      {}};
  for (const findings::ReportingItem& item : findings::reporting_items(*matter.found))
    table.rows.push_back({item.item, item.number, item.covered ? "yes" : "no", item.how});
  items.blocks.emplace_back(std::move(table));
  return {std::move(methods), std::move(items)};
}

}  // namespace lanework::cli
