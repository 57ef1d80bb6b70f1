#include <cmath>
#include <optional>

#include "app/cli/evidence/season_page/sections.h"

namespace lanework::cli {
namespace {

using evidence::NumberWords;

// A ratio with its limits, for chart and table.
struct RatioRow {
  std::string label;
  double ratio = 0;
  evidence::Interval limits;
};

std::vector<RatioRow> ratios(const findings::OftenOrNot& often, const NumberWords& words) {
  const findings::StratifiedComparison& c = often.compared;
  std::vector<RatioRow> out = {{words.say(Words{"all thrown together", "todo junto"}), c.crude, c.exact.limits}};
  out.push_back({words.say(Words{"like with like", "igual con igual"}), c.ratio->estimate, c.ratio->limits});
  if (c.ratio_by_squads)
    out.push_back(
        {words.say(Words{"like with like, squads counted as squads", "igual con igual, contando cada equipo como uno"}),
         c.ratio->estimate, c.ratio_by_squads->limits});
  if (often.whole_squads.ratio)
    out.push_back(
        {words.say(Words{"squads that were all season in one", "equipos que estuvieron toda la temporada en uno"}),
         often.whole_squads.ratio->ratio, often.whole_squads.ratio->tested.limits});
  return out;
}

report::Chart ratio_chart(const SeasonPageMatter& matter, const NumberWords& words) {
  const findings::OftenOrNot& often = matter.found->often;
  report::Intervals data;
  data.x_title = words.say(Words{"times the rate of weeks after fewer", "veces la tasa de las semanas tras menos"});
  data.log = true;
  data.reference = report::Reference{1, words.say(Words{"no difference", "sin diferencia"})};
  report::Table table{words.say(Words{"Weeks after about two or more warm-ups a week by the others",
                                      "Semanas tras unos dos o más calentamientos por semana, frente a las demás"}),
                      {{"", false}, {words.say(Words{"times", "veces"}), true}, {limits_heading(matter), true}},
                      {}};
  for (const RatioRow& row : ratios(often, words)) {
    data.rows.push_back({row.label, row.ratio, row.limits.low,
                         std::isfinite(row.limits.high) ? std::optional(row.limits.high) : std::nullopt, ""});
    table.rows.push_back({row.label, words.in_digits(row.ratio), words.limits_words(row.limits)});
  }
  return {
      "often",
      words.say(
          Words{"How many times the rate of weeks after fewer", "Cuántas veces la tasa de las semanas tras menos"}),
      words.say(Words{
          "Each bar is as wide as the ratio is uncertain; the more of what differs is held alike, the better the row.",
          "Cada barra es tan ancha como incierta es la razón de tasas; cuanto más se iguala de lo que difiere, mejor "
          "es la fila."}),
      std::move(data), std::move(table)};
}

report::Table arms_table(const findings::OftenOrNot& often, const NumberWords& words) {
  report::Table table{
      words.say(Words{"The two kinds of weeks", "Las dos clases de semanas"}),
      {{words.say(Words{"warm-ups a week lately", "calentamientos por semana en las últimas semanas"}), false},
       {words.say(Words{"squads' weeks", "semanas de equipo"}), true},
       {words.say(Words{"injuries", "lesiones"}), true},
       {words.say(Words{"hours", "horas"}), true},
       {words.say(Words{"in 1000 hours", "por 1000 horas"}), true}},
      {}};
  const auto row = [&](const Words& label, int weeks, const evidence::Exposed& arm) {
    table.rows.push_back({words.say(label), std::to_string(weeks), std::to_string(arm.events),
                          words.as_counted(std::round(arm.hours)),
                          arm.hours > 0 ? words.in_digits(1000 * static_cast<double>(arm.events) / arm.hours) : "-"});
  };
  row({"1.5 or more", "1,5 o más"}, often.weeks_often, often.compared.one);
  row({"fewer", "menos"}, often.weeks_seldom, often.compared.other);
  return table;
}

std::string left_out_words(const findings::OftenOrNot& often, const NumberWords& words) {
  std::string out;
  if (often.weeks_unknown > 0)
    out += words.say({"{} squads' weeks are left out: nobody knows whether warm-ups were done. ",
                      "No se cuentan {} semanas de equipo: nadie sabe si se hizo el calentamiento. "},
                     often.weeks_unknown);
  if (often.events_left_out > 0)
    out += words.say({"{} injuries are left out: of such weeks, of weeks without hours, or of no known setting. ",
                      "No se cuentan {} lesiones: de esas semanas, de semanas sin horas o de contexto desconocido. "},
                     often.events_left_out);
  out += words.say(Words{"The time of the season is not held alike here; the model above does that.",
                         "El momento de la temporada no se iguala aquí; lo hace el modelo de arriba."});
  return out;
}

std::vector<std::string> arm_cells(const Words& label, const findings::TaughtArm& arm, const NumberWords& words) {
  return {words.say(label), std::to_string(arm.squads), arm.squads > 0 ? words.in_digits(arm.warm_ups_a_week, 2) : "-",
          arm.squads_with_fidelity > 0 ? words.percent(arm.most_did) : "-"};
}

// '6 lower', of 100.
std::string lower_or_higher(double share, const NumberWords& words) {
  const Sentence<1> said = share < 0 ? Sentence<1>{"{} lower", "{} menos"} : Sentence<1>{"{} higher", "{} más"};
  return words.say(said, words.as_counted(std::round(100 * std::abs(share))));
}

}  // namespace

report::Section taught_section(const SeasonPageMatter& matter) {
  const NumberWords words = words_of(matter);
  report::Section section{words.say(Words{"Coaches who were taught", "Entrenadores que recibieron formación"}), 2, {}};
  if (!matter.found->taught) return section;
  const findings::TaughtCoaches& t = *matter.found->taught;
  section.blocks = claim_paragraphs(matter, findings::ClaimKind::kTaught);
  report::Table table{words.say(Words{"Squads by whether the coach was taught, means of squads",
                                      "Equipos según si su entrenador recibió formación, medias de equipos"}),
                      {{"", false},
                       {words.say(Words{"squads", "equipos"}), true},
                       {words.say(Words{"warm-ups a week", "calentamientos por semana"}), true},
                       {words.say(Words{"of warm-ups, most did it", "de ellos, lo hizo la mayoría"}), true}},
                      {}};
  table.rows.push_back(arm_cells({"after being taught", "tras la formación"}, t.taught, words));
  table.rows.push_back(arm_cells({"without a day of teaching", "sin día de formación"}, t.not_taught, words));
  section.blocks.emplace_back(std::move(table));
  if (t.most_did)
    section.blocks.emplace_back(report::Paragraph{
        words.say({"Of warm-ups, the share in which most took part was {} of 100 after teaching ({}). It is "
                   "what coaches wrote down; no observer's visits are in these records.",
                   "De los calentamientos, aquellos en que participó la mayoría fueron {} de cada 100 tras la "
                   "formación ({}). Es lo que anotaron los entrenadores; en estos registros no hay "
                   "visitas de observación."},
                  lower_or_higher(t.most_did->difference, words),
                  words.from_to(lower_or_higher(t.most_did->limits.low, words),
                                lower_or_higher(t.most_did->limits.high, words)))});
  if (t.change)
    section.blocks.emplace_back(report::Paragraph{words.say(
        {"Squads with weeks before and after the teaching ({}): {} warm-ups a week before, {} after, a difference "
         "of {} ({}). Warm-ups often wane through a season, taught or not.",
         "Equipos con semanas antes y después de la formación ({}): {} calentamientos por semana antes, {} "
         "después, una diferencia de {} ({}). Los calentamientos suelen decaer a lo largo de la temporada, con "
         "formación o sin ella."},
        t.squads_both, words.in_digits(t.before, 2), words.in_digits(t.after, 2),
        words.in_digits(t.change->difference, 2),
        words.from_to(words.in_digits(t.change->limits.low, 2), words.in_digits(t.change->limits.high, 2)))});
  return section;
}

report::Section often_section(const SeasonPageMatter& matter) {
  const findings::OftenOrNot& often = matter.found->often;
  const NumberWords words = words_of(matter);
  report::Section section{words.say(Words{"About two or more warm-ups a week against fewer",
                                          "Unos dos o más calentamientos por semana frente a menos"}),
                          2, claim_paragraphs(matter, findings::ClaimKind::kOften)};
  if (section.blocks.empty() || !often.compared.ratio) return section;
  section.blocks.emplace_back(ratio_chart(matter, words));
  if (matter.reader == findings::Reader::kBoard) return section;
  section.blocks.emplace_back(arms_table(often, words));
  if (often.needed)
    section.blocks.emplace_back(report::Paragraph{
        words.say({"In squads' seasons of {}, warmed up that often instead of less, if it were cause and "
                   "effect: {}.",
                   "En temporadas de equipo de {}, calentando así de a menudo en vez de menos, si fuera "
                   "causa y efecto: {}."},
                  words.hours_words(std::round(often.hours_a_squad_season)),
                  words.needed_words(*often.needed, evidence::kInjuryWords, {"such seasons", "temporadas así"}))});
  section.blocks.emplace_back(report::Paragraph{left_out_words(often, words)});
  return section;
}

}  // namespace lanework::cli
