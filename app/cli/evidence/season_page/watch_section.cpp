#include "app/cli/evidence/season_page/sections.h"

namespace lanework::cli {

report::Section watch_section(const SeasonPageMatter& matter) {
  const evidence::NumberWords words = words_of(matter);
  report::Section section{words.say(Words{"Watched week by week", "Vigilancia semana a semana"}), 1, {}};
  if (!matter.found->watched || matter.reader == findings::Reader::kBoard) return section;
  const findings::WatchedSeason& watched = *matter.found->watched;
  report::Watch data;
  data.events_title =
      words.say(Words{"injuries a week; the stroke: expected", "lesiones por semana; el trazo: lo esperado"});
  data.sum_title = words.say(Words{"sum of what is above expectation", "suma de lo que supera lo esperado"});
  data.decision = static_cast<double>(watched.plan.decision) / watched.plan.parts;
  report::Table table{words.say(Words{"Weeks, watched", "Semanas vigiladas"}),
                      {{words.say(Words{"week from", "semana del"}), false},
                       {words.say(Words{"injuries", "lesiones"}), true},
                       {words.say(Words{"expected", "esperadas"}), true},
                       {words.say(Words{"sum", "suma"}), true},
                       {"", false}},
                      {}};
  for (std::size_t i = 0; i < watched.weeks.size(); ++i) {
    const evidence::WatchedWeek& week = watched.weeks[i];
    const std::string label = to_iso(records::monday_of(matter.found->period, static_cast<int>(i)));
    data.weeks.push_back({label, static_cast<double>(week.events), week.expected, week.sum, week.alarm});
    table.rows.push_back({label, std::to_string(week.events), words.in_digits(week.expected), words.in_digits(week.sum),
                          week.alarm ? words.say(Words{"look into it", "mírelo"}) : ""});
  }
  section.blocks.emplace_back(report::Paragraph{words.say(
      {"The usual rate is {} in 1000 hours. The sum rises with every injury more than would be usual and falls in "
       "quiet "
       "weeks; when it reaches its limit it says: look into it. Where nothing has changed, that happens {} times in a "
       "season like this one by chance.",
       "La tasa habitual es de {} por 1000 horas. La suma sube con cada lesión de más sobre lo habitual y baja en "
       "semanas tranquilas; cuando llega a su límite dice: mírelo. Donde nada ha cambiado, eso pasa {} veces por azar "
       "en una temporada como esta."},
      words.in_digits(1000 * watched.plan.usual_rate), words.in_digits(watched.false_alarms, 2))});
  section.blocks.emplace_back(
      report::Chart{"watch",
                    words.say(Words{"Injuries week by week against the usual rate",
                                    "Lesiones semana a semana frente a la tasa habitual"}),
                    words.say(Words{"Above, the sum and the limit at which it says 'look into it'; below, each "
                                    "week's injuries and what was expected.",
                                    "Arriba, la suma y el límite en que dice «mírelo»; abajo, las lesiones de cada "
                                    "semana y lo que se esperaba."}),
                    std::move(data), std::move(table)});
  return section;
}

}  // namespace lanework::cli
