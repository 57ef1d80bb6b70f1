#include "core/findings/reporting_items.h"

#include "core/base/date.h"

namespace lanework::findings {
namespace {

bool any_known(const SeasonFindings& found, const char* field) {
  for (const records::FieldKnown& known : found.completeness.fields)
    if (known.key == field) return known.known > 0;
  return false;
}

constexpr Words kNotRecorded{"not recorded", "no se registra"};
constexpr Words kNoInjury{"no injury", "ninguna lesión"};

// What is to be told, and where it is or what is wanting.
struct Item {
  const char* number;
  Words item;
  bool covered;
  Words how;
};

// Those with a number.
std::vector<Item> numbered_items() {
  return {
      {"1.1",
       {"sport, who the athletes are, level", "deporte, quiénes son los deportistas, nivel"},
       false,
       {"squads by age band and sex are told; sport and level of play are to be added by the club",
        "se dan los equipos por categoría de edad y sexo; el deporte y el nivel los añade el club"}},
      {"3.1",
       {"registration of the study", "registro del estudio"},
       false,
       {"a club's own records are not registered", "los registros propios de un club no se inscriben"}},
      {"3.2",
       {"the purpose", "la finalidad"},
       true,
       {"whether warm-ups are done, and whether weeks with more of them have fewer injuries",
        "si se hacen los calentamientos, y si las semanas con más de ellos tienen menos lesiones"}},
      {"4.1",
       {"which health problems are recorded", "qué problemas de salud se registran"},
       true,
       {"injuries; illness is not recorded here", "lesiones; aquí no se registran enfermedades"}},
      {"4.2",
       {"how they are recorded", "cómo se registran"},
       true,
       {"by the club, one row a diagnosis (docs/formats/records.md)",
        "por el club, una fila por diagnóstico (docs/formats/records.md)"}},
      {"4.3",
       {"the coding of diagnoses", "la codificación de los diagnósticos"},
       true,
       {"body region and tissue in the consensus' terms", "región corporal y tejido en los términos del consenso"}},
      {"4.4",
       {"how athletes are grouped", "cómo se agrupan los deportistas"},
       true,
       {"by squad, age band, sex, training and match", "por equipo, categoría de edad, sexo, entrenamiento y partido"}},
  };
}

std::vector<Item> items_of_events(const SeasonFindings& found) {
  const bool recurrence = any_known(found, "recurrence");
  return {
      {"",
       {"exposure, its unit, how it was measured", "exposición, su unidad, cómo se midió"},
       true,
       {"player-hours: minutes times players there, in matches times players on the field; usual values are counted",
        "horas de jugador: minutos por jugadores presentes, en partidos por jugadores en el campo; se cuentan los "
        "valores habituales"}},
      {"",
       {"missing exposure and incomplete follow-up", "exposición que falta y seguimiento incompleto"},
       true,
       {"completeness stands first; open injuries are counted",
        "lo primero es lo completo que está; se cuentan las lesiones abiertas"}},
      {"",
       {"several injuries of one event, and of one player", "varias lesiones de un episodio, y de un jugador"},
       true,
       {"an event counts once; tables of regions and tissues count diagnoses; players' repeats are not modelled",
        "un episodio cuenta una vez; las tablas de regiones y tejidos cuentan diagnósticos; no se modelan las "
        "repeticiones de un jugador"}},
      {"",
       {"subsequent injuries", "lesiones posteriores"},
       recurrence,
       recurrence ? Words{"first, re-injury, exacerbation, local, new", "primera, recaída, exacerbación, local, nueva"}
                  : kNotRecorded},
  };
}

std::vector<Item> items_of_figures(const SeasonFindings& found) {
  const bool severity = found.whole.rows.front().injuries > 0;
  const bool region = any_known(found, "region");
  return {
      {"",
       {"severity and how time loss is counted", "gravedad y cómo se cuenta el tiempo perdido"},
       severity,
       severity ? Words{"days lost by the consensus' rule, in its bands, with median",
                        "días perdidos según la regla del consenso, en sus tramos, con mediana"}
                : kNoInjury},
      {"",
       {"rates with intervals and units", "tasas con intervalos y unidades"},
       true,
       {"per 1000 player-hours, exact limits", "por 1000 horas de jugador, intervalos exactos"}},
      {"",
       {"burden with an interval", "carga con un intervalo"},
       severity,
       severity ? Words{"days lost per 1000 player-hours", "días perdidos por 1000 horas de jugador"} : kNoInjury},
      {"",
       {"mode of onset, contact, region, tissue", "modo de inicio, contacto, región, tejido"},
       region,
       region ? Words{"a table each", "una tabla cada uno"} : kNotRecorded},
      {"",
       {"athletes who joined or left", "deportistas que llegaron o se fueron"},
       !found.completeness.fields.empty(),
       {"hours are those of the players who were there; joining and leaving only mark doubtful rows",
        "las horas son las de los jugadores presentes; llegar e irse solo señala filas dudosas"}},
      {"",
       {"limits of data quality", "límites de la calidad de los datos"},
       true,
       {"questions about rows are counted; cautions stand in the summary",
        "se cuentan las dudas sobre las filas; las cautelas están en el resumen"}},
      {"",
       {"privacy", "privacidad"},
       true,
       {"players are pseudonyms; the board's version withholds fewer than 5",
        "los jugadores son seudónimos; la versión de la junta oculta los recuentos menores de 5"}},
  };
}

}  // namespace

std::vector<ReportingItem> reporting_items(const SeasonFindings& found) {
  const Speaker speaker(found.asked.language);
  std::vector<ReportingItem> out;
  const auto add = [&](const std::vector<Item>& items) {
    for (const Item& item : items)
      out.push_back({item.number, speaker.say(item.item), item.covered, speaker.say(item.how)});
  };
  add(numbered_items());
  // The one whose answer is no fixed text stands second.
  out.insert(out.begin() + 1,
             {"1.2", speaker.say(Words{"how long they were observed", "cuánto tiempo se observaron"}), true,
              speaker.say({"{} to {}", "{} a {}"}, to_iso(found.period.first), to_iso(found.period.last))});
  add(items_of_events(found));
  add(items_of_figures(found));
  return out;
}

}  // namespace lanework::findings
