#include <algorithm>
#include <cmath>

#include "app/cli/evidence/season_page/sections.h"

namespace lanework::cli {
namespace {

using evidence::NumberWords;
using findings::SquadFinding;

// In the club's own order: by rate it would be read as a ranking.
report::Chart drawn_in(const SeasonPageMatter& matter, const std::vector<SquadFinding>& squads) {
  const NumberWords words = words_of(matter);
  report::Intervals data;
  data.x_title = words.say(Words{"injuries in 1000 player-hours, drawn towards the club",
                                 "lesiones por 1000 horas de jugador, acercadas al club"});
  report::Table table{words.say(Words{"Squads, drawn in", "Equipos, acercados al club"}),
                      {{words.say(Words{"squad", "equipo"}), false},
                       {words.say(Words{"injuries", "lesiones"}), true},
                       {words.say(Words{"hours", "horas"}), true},
                       {words.say(Words{"own rate", "tasa propia"}), true},
                       {words.say(Words{"drawn in", "acercada"}), true},
                       {words.say(Words{"own share", "peso propio"}), true}},
                      {}};
  for (const SquadFinding& squad : squads) {
    const std::string& name = matter.season->squads[squad.squad].shown();
    const evidence::Shrunken& s = squad.drawn_in;
    data.rows.push_back(
        {name, 1000 * s.estimate, 1000 * s.limits.low, 1000 * s.limits.high, std::to_string(squad.injuries)});
    table.rows.push_back({name, std::to_string(squad.injuries), words.as_counted(std::round(squad.hours)),
                          words.in_digits(1000 * squad.injuries / squad.hours),
                          words.in_digits(1000 * s.estimate) + " (" + words.limits_words(s.limits, 1000) + ")",
                          words.as_counted(std::round(100 * s.weight_of_own)) + " %"});
  }
  data.reference =
      report::Reference{1000 * matter.found->whole.rows.front().per_hour(), words.say(Words{"club", "club"})};
  return {"squads-drawn-in",
          words.say(Words{"Squads, each drawn towards the club", "Equipos, cada uno acercado al club"}),
          words.say(
              Words{"Few events say little about one squad, so that its rate is moved towards the club's; where bars "
                    "overlap, squads cannot be told apart.",
                    "Pocas lesiones dicen poco de un equipo, así que su tasa se acerca a la del club; donde las barras "
                    "se solapan, los equipos no se distinguen."}),
          std::move(data), std::move(table)};
}

// Lines for the expected counts from the least to the greatest.
std::vector<report::FunnelLine> lines_between(double least, double most, const evidence::OverDispersion& dispersion) {
  constexpr int kSteps = 60;
  std::vector<report::FunnelLine> out;
  for (int step = 0; step <= kSteps; ++step) {
    const double expected = least + (most - least) * step / kSteps;
    const auto limit = [&](double share) { return evidence::widened_limit(expected, share, dispersion); };
    out.push_back({expected, limit(0.025), limit(0.975), limit(0.001), limit(0.999)});
  }
  return out;
}

report::Chart funnel(const SeasonPageMatter& matter, const findings::SquadFindings& squads) {
  const NumberWords words = words_of(matter);
  report::Funnel data;
  data.x_title = words.say(Words{"injuries expected at the club's rate", "lesiones esperadas con la tasa del club"});
  data.y_title = words.say(Words{"seen by expected", "vistas entre esperadas"});
  data.inner_name = words.say(Words{"95 in 100 squads", "95 de cada 100 equipos"});
  data.outer_name = words.say(Words{"998 in 1000", "998 de cada 1000"});
  report::Table table{
      words.say(Words{"Squads beside what was expected of their hours", "Equipos junto a lo esperado de sus horas"}),
      {{words.say(Words{"squad", "equipo"}), false},
       {words.say(Words{"injuries", "lesiones"}), true},
       {words.say(Words{"expected", "esperadas"}), true},
       {words.say(Words{"ratio", "razón"}), true},
       {words.say(Words{"inner lines", "líneas interiores"}), true},
       {words.say(Words{"outer lines", "líneas exteriores"}), true}},
      {}};
  double most = 0;
  for (const SquadFinding& squad : squads.squads) {
    const std::string& name = matter.season->squads[squad.squad].shown();
    const double ratio = squad.injuries / squad.expected;
    most = std::max(most, squad.expected);
    data.points.push_back({name, squad.expected, ratio});
    table.rows.push_back({name, std::to_string(squad.injuries), words.in_digits(squad.expected), words.in_digits(ratio),
                          words.limits_words(squad.inner), words.limits_words(squad.outer)});
  }
  data.lines = lines_between(most / 60, 1.1 * most, squads.dispersion);
  return {"squads-funnel",
          words.say(Words{"Squads beside what chance would do", "Equipos junto a lo que haría el azar"}),
          words.say(
              Words{"Between the inner lines lie 95 of 100 squads whose true rate is the club's; outside them comes a "
                    "question, not a verdict.",
                    "Entre las líneas interiores quedan 95 de cada 100 equipos cuya tasa verdadera es la del club; "
                    "fuera de ellas hay una pregunta, no un veredicto."}),
          std::move(data), std::move(table)};
}

}  // namespace

std::vector<report::Section> squad_sections(const SeasonPageMatter& matter) {
  if (!matter.found->squads || matter.reader == findings::Reader::kBoard) return {};
  const findings::SquadFindings& squads = *matter.found->squads;
  const NumberWords words = words_of(matter);
  report::Section section{words.say(Words{"Squads", "Equipos"}), 1, {}};
  section.blocks.emplace_back(report::Paragraph{words.say(
      Words{"This is no league table. Squads of few hours lie far out by chance alone; ages, pitches, matches and "
            "who writes injuries down move the rest.",
            "Esto no es una clasificación. Los equipos con pocas horas quedan lejos solo por azar; las edades, "
            "los campos, los partidos y quién anota las lesiones mueven el resto."})});
  if (squads.dispersion.beyond_chance)
    section.blocks.emplace_back(report::Paragraph{words.say(
        {"Squads differ more than by chance ({} times the variance), so that the lines are drawn further apart.",
         "Los equipos difieren más que por azar ({} veces la varianza), así que las líneas se trazan más "
         "separadas."},
        words.in_digits(squads.dispersion.factor))});
  section.blocks.emplace_back(drawn_in(matter, squads.squads));
  section.blocks.emplace_back(funnel(matter, squads));
  return {std::move(section)};
}

}  // namespace lanework::cli
