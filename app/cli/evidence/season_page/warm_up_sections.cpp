#include <algorithm>
#include <cmath>

#include "app/cli/evidence/season_page/sections.h"

namespace lanework::cli {
namespace {

using evidence::NumberWords;

constexpr std::array<Words, records::kWarmUps + 1> kDoneWords = {{{"most did it", "la mayoría"},
                                                                  {"half", "la mitad"},
                                                                  {"few", "pocos"},
                                                                  {"not done", "no se hizo"},
                                                                  {"not known", "no se sabe"}}};
constexpr Words kAWeek{"warm-ups a week", "calentamientos por semana"};
constexpr Words kFirstHalf{"first half", "primera mitad"};
constexpr Words kSecondHalf{"second half", "segunda mitad"};

report::Chart shares(const SeasonPageMatter& matter) {
  const NumberWords words = words_of(matter);
  report::Shares data;
  report::Table table{
      words.say(Words{"Sessions by how many did the warm-up", "Sesiones según cuántos hicieron el calentamiento"}),
      {{words.say(Words{"squad", "equipo"}), false},
       {words.say(kDoneWords[0]), true},
       {words.say(kDoneWords[1]), true},
       {words.say(kDoneWords[2]), true},
       {words.say(kDoneWords[3]), true},
       {words.say(kDoneWords[4]), true},
       {words.say(kAWeek), true},
       {words.say(kFirstHalf), true},
       {words.say(kSecondHalf), true}},
      {}};
  for (const findings::SquadReach& squad : matter.found->reach.squads) {
    const std::string& name = matter.season->squads[squad.squad].shown();
    report::SharesRow row{name, {}};
    std::vector<std::string> cells = {name};
    for (std::size_t w = 0; w < kDoneWords.size(); ++w) {
      row.parts.push_back({words.say(kDoneWords[w]), squad.sessions[w]});
      cells.push_back(std::to_string(squad.sessions[w]));
    }
    for (const std::optional<double>& a_week : {squad.warm_ups_a_week, squad.first_half, squad.second_half})
      cells.push_back(a_week ? words.in_digits(*a_week, 2) : "-");
    data.rows.push_back(std::move(row));
    table.rows.push_back(std::move(cells));
  }
  return {"warm-ups-done", words.say(Words{"Was the warm-up done?", "¿Se hizo el calentamiento?"}),
          words.say(Words{
              "Each bar is a squad's sessions: in how many of them most, half or few did the warm-up, or nobody. A "
              "session not known counts, in warm-ups a week, as the others of its week.",
              "Cada barra son las sesiones de un equipo: en cuántas hizo el calentamiento la mayoría, la mitad, "
              "pocos o nadie. Una sesión de la que no se sabe cuenta, en calentamientos por semana, como las otras "
              "de su semana."}),
          std::move(data), std::move(table)};
}

std::string name_of(const std::string& drill, const SeasonPageMatter& matter) {
  const auto known = matter.drill_names->find(drill);
  return known == matter.drill_names->end() ? drill : known->second;
}

report::Table ages_table(const findings::Reach& reach, const NumberWords& words) {
  report::Table table{
      words.say(Words{"By age band", "Por categoría de edad"}),
      {{"", false},
       {words.say(Words{"squads", "equipos"}), true},
       {words.say(Words{"did it once", "lo hicieron una vez"}), true},
       {words.say(Words{"once a week or more", "una vez por semana o más"}), true},
       {words.say(Words{"most did it, of known sessions", "lo hizo la mayoría, de las sesiones conocidas"}), true},
       {words.say(kAWeek), true},
       {words.say(kFirstHalf), true},
       {words.say(kSecondHalf), true}},
      {}};
  for (const findings::AgeReach& age : reach.ages) {
    std::vector<std::string> cells = {
        age.age_band.empty() ? words.say(kDoneWords.back()) : age.age_band, std::to_string(age.squads),
        std::to_string(age.reached), std::to_string(age.taken_up),
        age.sessions > 0 ? words.percent(static_cast<double>(age.most_did_it) / age.sessions) : "-"};
    for (const std::optional<double>& a_week : {age.warm_ups_a_week, age.first_half, age.second_half})
      cells.push_back(a_week ? words.in_digits(*a_week, 2) : "-");
    table.rows.push_back(std::move(cells));
  }
  return table;
}

report::Section reach_section(const SeasonPageMatter& matter) {
  const NumberWords words = words_of(matter);
  report::Section section{words.say(Words{"Are the warm-ups done?", "¿Se hacen los calentamientos?"}), 1,
                          claim_paragraphs(matter, findings::ClaimKind::kReach)};
  if (matter.found->reach.ages.size() > 1) section.blocks.emplace_back(ages_table(matter.found->reach, words));
  const std::vector<findings::DrillNamed>& drills = matter.found->reach.drills;
  if (drills.empty()) return section;
  report::Table table{words.say(Words{"Drills most often left out, or that coaches ask for help with",
                                      "Ejercicios que más se dejan fuera, o para los que se pide ayuda"}),
                      {{words.say(Words{"drill", "ejercicio"}), false},
                       {words.say(Words{"left out", "se deja fuera"}), true},
                       {words.say(Words{"help asked", "se pide ayuda"}), true}},
                      {}};
  for (std::size_t i = 0; i < std::min<std::size_t>(10, drills.size()); ++i)
    table.rows.push_back(
        {name_of(drills[i].drill, matter), std::to_string(drills[i].left_out), std::to_string(drills[i].needing_help)});
  section.blocks.emplace_back(std::move(table));
  return section;
}

std::string model_words(const findings::WarmUpModel& model, const NumberWords& words) {
  const Sentence<3> of_weeks =
      model.negative_binomial
          ? Sentence<3>{"A negative binomial model of {} squad-weeks with {} injuries, on the warm-ups a week of the last "
                        "four weeks, with an effect of each squad's own; age bands, the share of match hours and the time "
                        "of the season are held alike{}.",
                        "Un modelo binomial negativo de {} semanas de equipo con {} lesiones, según los calentamientos "
                        "por semana de las últimas cuatro semanas, con un efecto propio de cada equipo; se igualan las "
                        "categorías de edad, la proporción de horas de partido y el momento de la temporada{}."}
          : Sentence<3>{"A Poisson model of {} squad-weeks with {} injuries, on the warm-ups a week of the last four "
                        "weeks, with an effect of each squad's own; age bands, the share of match hours and the time of "
                        "the season are held alike{}.",
                        "Un modelo de Poisson de {} semanas de equipo con {} lesiones, según los calentamientos por "
                        "semana de las últimas cuatro semanas, con un efecto propio de cada equipo; se igualan las "
                        "categorías de edad, la proporción de horas de partido y el momento de la temporada{}."};
  const std::string except = model.left_out.empty() ? std::string()
                                                    : words.say({", except {}, which these rows cannot tell apart",
                                                                 ", salvo {}, que estas filas no permiten "
                                                                 "distinguir"},
                                                                words.list(model.left_out));
  std::string out = words.say(of_weeks, model.rows, model.events, except);
  if (model.rows_unknown > 0)
    out += words.say({" {} squad-weeks are left out: nobody knows whether warm-ups were done.",
                      " No se cuentan {} semanas de equipo: nadie sabe si se hizo el calentamiento."},
                     model.rows_unknown);
  return out;
}

report::Section model_section(const SeasonPageMatter& matter) {
  const findings::WarmUpModel& model = matter.found->warm_ups;
  const NumberWords words = words_of(matter);
  report::Section section{words.say(Words{"Do weeks after more warm-ups have fewer injuries?",
                                          "¿Hay menos lesiones en las semanas tras más calentamientos?"}),
                          1, claim_paragraphs(matter, findings::ClaimKind::kWarmUps)};
  if (model.why_not || findings::is_withheld(matter.reader, model.events)) return section;
  report::Curve data;
  data.x_title = words.say(Words{"warm-ups a week, lately", "calentamientos por semana, últimas semanas"});
  data.y_title = words.say(Words{"times the rate without", "veces la tasa sin ellos"});
  data.reference_label = words.say(Words{"no difference", "sin diferencia"});
  data.log = true;
  report::Table table{
      words.say(Words{"The rate by warm-ups a week, against none",
                      "La tasa según los calentamientos por semana, frente a ninguno"}),
      {{words.say(kAWeek), false}, {words.say(Words{"times", "veces"}), true}, {limits_heading(matter), true}},
      {}};
  for (const evidence::CurvePoint& point : model.curve) {
    data.points.push_back({point.value, point.times, point.limits.low, point.limits.high});
    table.rows.push_back(
        {words.as_counted(point.value), words.in_digits(point.times), words.limits_words(point.limits)});
  }
  section.blocks.emplace_back(report::Chart{
      "dose", words.say(Words{"Injuries by warm-ups a week", "Lesiones según los calentamientos por semana"}),
      words.say({"The line is the rate against that without warm-ups, the band its {}.",
                 "La línea es la tasa frente a la de no calentar; la banda, su {}."},
                limits_heading(matter)),
      std::move(data), std::move(table)});
  section.blocks.emplace_back(report::Paragraph{model_words(model, words)});
  section.blocks.emplace_back(report::Paragraph{
      words.say(Words{"Squads were not drawn by lot. Who warms up often may differ in coach, pitch and "
                      "much else that no record holds.",
                      "Los equipos no se sortearon. Quien calienta a menudo puede diferir en "
                      "entrenador, campo y mucho más que ningún registro recoge."})});
  return section;
}

}  // namespace

std::vector<report::Section> warm_up_sections(const SeasonPageMatter& matter) {
  return {reach_section(matter),
          taught_section(matter),
          {words_of(matter).say(Words{"Squad by squad", "Equipo por equipo"}), 2, {shares(matter)}},
          model_section(matter)};
}

}  // namespace lanework::cli
