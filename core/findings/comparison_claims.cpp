#include "core/findings/comparison_claims.h"

#include <algorithm>
#include <cmath>

#include "core/base/date_words.h"
#include "core/findings/small_cells.h"

namespace lanework::findings {
namespace {

using evidence::NumberWords;

// '2.4 %'.
std::string small_percent(double share, const NumberWords& words) { return words.in_digits(100 * share, 2) + " %"; }

std::string small_percents(const evidence::Interval& limits, const NumberWords& words) {
  return words.from_to(words.in_digits(100 * limits.low, 2), small_percent(limits.high, words));
}

// '0.3 more', '0.1 fewer'.
std::string more_or_fewer(double difference, const NumberWords& words) {
  constexpr double kHundred = 100;
  const Sentence<1> said = difference < 0 ? Sentence<1>{"{} fewer", "{} menos"} : Sentence<1>{"{} more", "{} más"};
  return words.say(said, words.as_counted(std::round(kHundred * std::abs(difference)) / kHundred));
}

// Some of the table's counts are kept from this reader; a sum that holds them would give them away.
bool any_withheld(const RateTable& table, Reader reader) {
  std::vector<int> counts;
  for (const RateRow& row : table.rows) counts.push_back(row.injuries);
  const std::vector<bool> hidden = withheld_rows(counts, reader);
  return std::find(hidden.begin(), hidden.end(), true) != hidden.end();
}

std::string players_words(const Prevalence& p, const NumberWords& words) {
  return words.say(p.listed ? Sentence<1>{"{} players on the books", "{} jugadores inscritos"}
                            : Sentence<1>{"{} players", "{} jugadores"},
                   words.grouped(p.players));
}

std::string worst_week(const Prevalence& p, const NumberWords& words) {
  const auto worst = std::max_element(p.weeks.begin(), p.weeks.end(),
                                      [](const ShareOut& a, const ShareOut& b) { return a.share() < b.share(); });
  return words.say({" Most were out in the week from {}: {}.", " La semana con más bajas fue la del {}: {}."},
                   to_words(worst->from, words.language()), small_percent(worst->share(), words));
}

// What the interval allows to be said of weeks after often and after seldom.
Claim often_claim(const OftenOrNot& often, Verdict verdict, const std::string& ratio, const NumberWords& words) {
  switch (verdict) {
    case Verdict::kFewer: {
      std::string text = words.say(
          {"Weeks after about two or more warm-ups a week lately had fewer injuries: {}. That the two go together does "
           "not show that the one makes the other.",
           "Las semanas precedidas de unos dos o más calentamientos por semana tuvieron menos lesiones: {}. "
           "Que ambas cosas vayan juntas no muestra que una produzca la otra."},
          ratio);
      if (often.needed && !often.needed->through_infinity)
        text += words.say(
            {" If it were cause and effect: {}, each of {} player-hours.",
             " Si fuera causa y efecto: {}, cada una de {} horas de jugador."},
            words.needed_words(*often.needed, evidence::kInjuryWords, {"squads' seasons", "temporadas de equipo"}),
            words.grouped(often.hours_a_squad_season));
      return {ClaimKind::kOften, text};
    }
    case Verdict::kMore:
      return {
          ClaimKind::kOften,
          words.say({"Weeks after about two or more warm-ups a week lately had more injuries: {}. Look first at who "
                     "writes what down, and at which squads were told to warm up because they had injuries.",
                     "Las semanas precedidas de unos dos o más calentamientos por semana tuvieron más "
                     "lesiones: {}. Mire primero quién anota qué, y a qué equipos se les dijo que calentaran "
                     "porque tenían lesiones."},
                    ratio)};
    case Verdict::kNoneThatMatters:
      return {ClaimKind::kOften,
              words.say({"Weeks after about two or more warm-ups a week lately differ from the others by nothing that "
                         "matters: {}.",
                         "Las semanas precedidas de unos dos o más calentamientos por semana no difieren "
                         "de las demás en nada que importe: {}."},
                        ratio)};
    case Verdict::kTooEarly:
      break;
  }
  return {ClaimKind::kOften,
          words.say({"Too early to tell whether weeks after about two or more warm-ups a week lately have fewer "
                     "injuries: {}.",
                     "Demasiado pronto para decir si las semanas precedidas de unos dos o más calentamientos por "
                     "semana tienen menos lesiones: {}."},
                    ratio),
          true};
}

}  // namespace

std::string interval_words(double level, const std::string& limits, const NumberWords& words) {
  return words.say({"{} limits {}", "intervalo de confianza del {}: {}"}, words.level_words(level), limits);
}

std::vector<Claim> prevalence_claims(const SeasonFindings& found, Reader reader) {
  if (!found.prevalence || is_withheld(reader, found.prevalence->players_out)) return {};
  const NumberWords words(found.asked.language);
  const Prevalence& p = *found.prevalence;
  const std::string players = players_words(p, words);
  if (p.season.days_out == 0)
    return {{ClaimKind::kPrevalence, words.say({"On no day was a player of {} on record as out with an injury.",
                                                "Ningún día consta de baja por lesión jugador alguno de {}."},
                                               players)}};
  std::string text =
      words.say({"On a day of the season {} of {} were out with an injury, on the average",
                 "En un día cualquiera de la temporada estaba de baja por lesión, de media, el {} de {}"},
                small_percent(p.season.share(), words), players);
  text += p.season.limits
              ? " (" + interval_words(found.asked.level, small_percents(*p.season.limits, words), words) + ")."
              : words.say(Words{"; too few were out for limits.",
                                "; estuvieron de baja demasiado pocos para dar un intervalo."});
  if (reader == Reader::kLead && p.weeks.size() > 1) text += worst_week(p, words);
  if (p.injuries_left_out > 0) {
    const bool one = p.injuries_left_out == 1 && !is_withheld(reader, p.injuries_left_out);
    text += words.say(one ? Sentence<1>{" Not in it: {} injury of players who were not on the books.",
                                        " No incluye {} lesión de jugadores que no estaban inscritos."}
                          : Sentence<1>{" Not in it: {} injuries of players who were not on the books.",
                                        " No incluye {} lesiones de jugadores que no estaban inscritos."},
                      count_for(reader, p.injuries_left_out, words.language()));
  }
  return {{ClaimKind::kPrevalence, text}};
}

std::vector<Claim> recurrent_claims(const SeasonFindings& found, Reader reader) {
  if (!found.recurrent || any_withheld(found.histories, reader)) return {};
  const NumberWords words(found.asked.language);
  const RecurrentShare& r = *found.recurrent;
  const std::string known =
      words.counted(r.known, {"one diagnosis", "un diagnóstico"}, {"{} diagnoses", "{} diagnósticos"});
  const std::string share = small_percent(static_cast<double>(r.recurrent) / r.known, words) + " (" +
                            interval_words(found.asked.level, small_percents(r.limits, words), words) + ").";
  if (r.recurrent == 0)
    return {{ClaimKind::kHistories,
             words.say({"Of {} whose history is known, none were of a place and kind that the player had hurt before: ",
                        "De {} con antecedentes conocidos, ninguno era de un sitio y tipo que el jugador ya se hubiera "
                        "lesionado: "},
                       known) +
                 share}};
  const Sentence<2> were =
      r.recurrent == 1
          ? Sentence<2>{"Of {} whose history is known, {} was of a place and kind that the player had hurt before: ",
                        "De {} con antecedentes conocidos, {} era de un sitio y tipo que el jugador ya se había "
                        "lesionado: "}
          : Sentence<2>{"Of {} whose history is known, {} were of a place and kind that the player had hurt before: ",
                        "De {} con antecedentes conocidos, {} eran de un sitio y tipo que el jugador ya se había "
                        "lesionado: "};
  return {{ClaimKind::kHistories, words.say(were, known, r.recurrent) + share}};
}

std::vector<Claim> taught_claims(const SeasonFindings& found) {
  if (!found.taught || !found.taught->a_week) return {};
  const NumberWords words(found.asked.language);
  const TaughtCoaches& t = *found.taught;
  const auto squads = [&](int count) {
    return words.counted(count, {"one squad", "un equipo"}, {"{} squads", "{} equipos"});
  };
  const std::string limits =
      words.from_to(more_or_fewer(t.a_week->limits.low, words), more_or_fewer(t.a_week->limits.high, words));
  const std::string means =
      words.say({"{} a week in {} after the coach was taught, {} in {} without a day of teaching: {} ({})",
                 "{} por semana en {} tras la formación de su entrenador, {} en {} sin día de formación: {} ({})"},
                words.in_digits(t.taught.warm_ups_a_week, 2), squads(t.taught.squads),
                words.in_digits(t.not_taught.warm_ups_a_week, 2), squads(t.not_taught.squads),
                more_or_fewer(t.a_week->difference, words), interval_words(found.asked.level, limits, words));
  if (t.a_week->limits.low > 0)
    return {{ClaimKind::kTaught,
             words.say({"Squads whose coach was taught did more warm-ups: {}. This is described, not caused: who is "
                        "sent to be taught may be keener.",
                        "Los equipos cuyo entrenador recibió formación hicieron más calentamientos: {}. Esto se "
                        "describe, no se atribuye: a quien se envía a formarse quizá le interese más."},
                       means)}};
  if (t.a_week->limits.high < 0)
    return {
        {ClaimKind::kTaught,
         words.say({"Squads whose coach was taught did fewer warm-ups: {}. Look first at who was sent to be taught, "
                    "and at who writes warm-ups down.",
                    "Los equipos cuyo entrenador recibió formación hicieron menos calentamientos: {}. Mire primero "
                    "a quién se envió a formarse y quién anota los calentamientos."},
                   means)}};
  return {{ClaimKind::kTaught,
           words.say({"Too early to tell whether squads whose coach was taught do more warm-ups: {}, so that more and "
                      "fewer are both possible.",
                      "Demasiado pronto para decir si los equipos cuyo entrenador recibió formación hacen más "
                      "calentamientos: {}, así que caben tanto más como menos."},
                     means),
           true}};
}

std::vector<Claim> often_claims(const SeasonFindings& found, Reader reader) {
  const OftenOrNot& often = found.often;
  const StratifiedComparison& c = often.compared;
  if (c.one.hours <= 0 || c.other.hours <= 0) return {};
  if (is_withheld(reader, static_cast<int>(c.one.events)) || is_withheld(reader, static_cast<int>(c.other.events)))
    return {};
  const NumberWords words(found.asked.language);
  if (!c.ratio_by_squads)
    return {{ClaimKind::kOften,
             words.say(Words{"Weeks after about two or more warm-ups a week lately cannot be compared with the others, "
                             "squads counted as squads: too few squads or injuries.",
                             "Las semanas precedidas de unos dos o más calentamientos por semana no pueden "
                             "compararse con las demás, contando cada equipo como uno: hay demasiado pocos equipos o "
                             "lesiones."})}};
  const evidence::Interval limits = c.ratio_limits();
  const Sentence<2> times = often.by_setting
                                ? Sentence<2>{"{} times the rate of the others, ages and settings held alike ({})",
                                              "{} veces la tasa de las demás, a igual edad y contexto ({})"}
                                : Sentence<2>{"{} times the rate of the others, ages held alike ({})",
                                              "{} veces la tasa de las demás, a igual edad ({})"};
  const std::string ratio = words.say(times, words.in_digits(c.ratio->estimate, 2),
                                      interval_words(found.asked.level, words.limits_words(limits), words));
  return {often_claim(often, verdict(limits), ratio, words)};
}

}  // namespace lanework::findings
