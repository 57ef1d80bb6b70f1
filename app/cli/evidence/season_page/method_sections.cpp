#include <utility>

#include "app/cli/evidence/season_page/sections.h"
#include "core/findings/reporting_items.h"

namespace lanework::cli {

namespace {

using evidence::NumberWords;

report::List methods_list(const SeasonPageMatter& matter, const NumberWords& words) {
  return {{
      words.say(
          Words{"Terms, days lost and events as in the 2020 consensus on recording injury in sport (doi "
                "10.1136/bjsports-2019-101969): neither the day of the injury nor that of return counts; an event "
                "of several diagnoses counts once.",
                "Términos, días perdidos y episodios según el consenso de 2020 sobre el registro de lesiones en el "
                "deporte (doi 10.1136/bjsports-2019-101969): no cuentan ni el día de la lesión ni el de la vuelta; "
                "un episodio con varios diagnósticos cuenta una vez."}),
      words.say(
          Words{"Hours: minutes times players there; in matches, minutes times players on the field. Where a row "
                "leaves them out, the squad's usual ones stand in, and are counted above.",
                "Horas: minutos por jugadores presentes; en partidos, minutos por jugadores en el campo. Donde una "
                "fila no los da, se toman los habituales del equipo, y se cuentan arriba."}),
      words.say({"Limits of rates are exact (Garwood) at {}; those of ratios exact conditional, each tail by itself.",
                 "Los intervalos de confianza de las tasas son exactos (Garwood) al {}; los de las razones de tasas, "
                 "exactos condicionales, cada cola por su lado."},
                words.level_words(matter.found->asked.level)),
      words.say(
          Words{"Days in 1000 hours: the wider of a gamma and a log-normal interval; where a few very long injuries "
                "are all there is, the true figure lies outside more often than said.",
                "Días por 1000 horas (carga): el más ancho de un intervalo gamma y uno lognormal; donde solo hay "
                "unas pocas lesiones muy largas, la cifra verdadera queda fuera más a menudo de lo dicho."}),
      words.say(
          Words{"Squads drawn in: gamma-Poisson, all gammas that may be weighed by their likelihood.",
                "Equipos acercados a la tasa del club: gamma-Poisson, todas las gammas posibles ponderadas por su "
                "verosimilitud."}),
      words.say(Words{"Warm-ups: one that most did counts whole, half did 0.5, few did 0.2 (own judgement).",
                      "Calentamientos: el que hizo la mayoría cuenta entero; la mitad, 0,5; pocos, 0,2 (criterio "
                      "propio)."}),
      words.say(
          Words{"Often or seldom warmed up: like with like by Mantel and Haenszel; the limits are at each end the "
                "wider of theirs and of those with each squad left out in turn (own judgement: 'about two' is 1.5 "
                "or more).",
                "Calentar a menudo o poco: igual con igual según Mantel y Haenszel; el intervalo es, en cada "
                "extremo, el más ancho entre el suyo y el que se obtiene dejando fuera cada equipo por turno "
                "(criterio propio: «unos dos» es 1,5 o más)."}),
      words.say(
          Words{"Out with an injury: days lost by days on the books; limits by leaving out each squad in turn, or "
                "each player where squads are few. Injuries from before the season are not on record.",
                "De baja por lesión: días perdidos entre días de inscripción; el intervalo, dejando fuera cada "
                "equipo por turno, o cada jugador donde hay pocos equipos. Las lesiones anteriores a la temporada "
                "no constan."}),
  }};
}

report::Table items_table(const SeasonPageMatter& matter, const NumberWords& words) {
  report::Table table{
      words.say(Words{"Items of the checklist in our own words; those without a number are recalled, not read",
                      "Puntos de la lista con nuestras palabras; los que no llevan número se citan de memoria"}),
      {{words.say(Words{"item", "punto"}), false},
       {words.say(Words{"number", "número"}), false},
       {words.say(Words{"told", "se dice"}), false},
       {words.say(Words{"where, or what is wanting", "dónde, o qué falta"}), false}},
      {}};
  for (const findings::ReportingItem& item : findings::reporting_items(*matter.found))
    table.rows.push_back(
        {item.item, item.number, words.say(item.covered ? Words{"yes", "sí"} : Words{"no", "no"}), item.how});
  return table;
}

}  // namespace

std::vector<report::Section> method_sections(const SeasonPageMatter& matter) {
  const NumberWords words = words_of(matter);
  report::Section methods{words.say(Words{"How the figures were made", "Cómo se calcularon las cifras"}), 1, {}};
  methods.blocks.emplace_back(methods_list(matter, words));
  report::Section items{words.say(Words{"What a report should tell, by the consensus' checklist",
                                        "Qué debe decir un informe, según la lista del consenso"}),
                        2,
                        {}};
  items.blocks.emplace_back(items_table(matter, words));
  return {std::move(methods), std::move(items)};
}

}  // namespace lanework::cli
