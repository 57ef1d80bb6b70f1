#include "core/findings/claims.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/evidence/number_words.h"
#include "core/findings/comparison_claims.h"

namespace lanework::findings {
namespace {

// Shares of squad-weeks with hours below which the rest of the report may mislead: own judgement.
constexpr double kTooMuchMissing = 0.8;
constexpr double kHardlyAny = 0.005;  // rounds to 0 %

double hours_of(records::PlayerMinutes minutes) { return static_cast<double>(minutes.count) / 60; }

// What is only roughly known, to two digits.
double roughly(double value) {
  if (value <= 0) return 0;
  const double scale = std::pow(10, std::floor(std::log10(value)) - 1);
  return std::round(value / scale) * scale;
}

struct Weeks {
  int with_rows = 0;
  int expected = 0;
};
Weeks weeks_of(const records::Completeness& completeness) {
  Weeks out;
  for (const records::SquadWeeks& squad : completeness.weeks) {
    out.with_rows += squad.with_rows;
    out.expected += squad.expected;
  }
  return out;
}

class Sentences {
 public:
  Sentences(const SeasonFindings& found, Reader reader)
      : found_(found), reader_(reader), words_(found.asked.language) {}

  std::vector<Claim> all() {
    completeness();
    reach();
    take(taught_claims(found_));
    warm_ups();
    take(often_claims(found_, reader_));
    rate();
    days();
    take(prevalence_claims(found_, reader_));
    take(recurrent_claims(found_, reader_));
    matches();
    squads();
    watch();
    cautions();
    return std::move(out_);
  }

 private:
  const SeasonFindings& found_;
  Reader reader_;
  evidence::NumberWords words_;
  std::vector<Claim> out_;

  void say(ClaimKind kind, std::string sentence) { out_.push_back({kind, std::move(sentence)}); }
  void take(std::vector<Claim> claims) {
    for (Claim& claim : claims) out_.push_back(std::move(claim));
  }
  [[nodiscard]] const RateRow& whole() const { return found_.whole.rows.front(); }
  [[nodiscard]] std::string count(int number) const { return count_for(reader_, number, words_.language()); }
  // Said of one: what is withheld is said of several.
  [[nodiscard]] bool is_one(int number) const { return number == 1 && !is_withheld(reader_, number); }

  void completeness() {
    const records::Completeness& c = found_.completeness;
    const Weeks weeks = weeks_of(c);
    if (weeks.expected > 0) {
      const double share = static_cast<double>(weeks.with_rows) / weeks.expected;
      std::string text = words_.say(
          {"Hours are on record for {} of {} squad-weeks ({}).", "Constan horas de {} de {} semanas de equipo ({})."},
          weeks.with_rows, weeks.expected, words_.percent(share));
      if (share < kTooMuchMissing)
        text += words_.say(Words{" So much is missing that all that follows may mislead.",
                                 " Falta tanto que todo lo que sigue puede inducir a error."});
      say(ClaimKind::kCompleteness, text);
    }
    usual_hours();
    if (c.open_events > 0) {
      const Sentence<1> open = is_one(c.open_events)
                                   ? Sentence<1>{"{} injury is still open: days lost are 'at least'.",
                                                 "{} lesión sigue abierta: los días perdidos son un mínimo."}
                                   : Sentence<1>{"{} injuries are still open: days lost are 'at least'.",
                                                 "{} lesiones siguen abiertas: los días perdidos son un mínimo."};
      say(ClaimKind::kCompleteness, capital(words_.say(open, count(c.open_events))));
    }
  }

  void usual_hours() {
    const records::Completeness& c = found_.completeness;
    const double hours = hours_of(c.hours);
    if (hours <= 0 || c.hours_defaulted().count == 0) return;
    const double confirmed = hours_of(c.hours_defaulted_and_confirmed) / hours_of(c.hours_defaulted());
    const std::string usual = words_.percent(hours_of(c.hours_defaulted()) / hours);
    if (confirmed < kHardlyAny) {
      say(ClaimKind::kCompleteness,
          words_.say(
              {"{} of the hours are the squads' usual ones, not counted on the day; none of these were confirmed "
               "by somebody.",
               "El {} de las horas son las habituales de los equipos, no contadas ese día; de ellas nadie "
               "confirmó ninguna."},
              usual));
      return;
    }
    say(ClaimKind::kCompleteness,
        words_.say({"{} of the hours are the squads' usual ones, not counted on the day; {} of these were confirmed by "
                    "somebody.",
                    "El {} de las horas son las habituales de los equipos, no contadas ese día; de ellas, alguien "
                    "confirmó el {}."},
                   usual, words_.percent(confirmed)));
  }

  void rate() {
    const RateRow& all = whole();
    if (all.hours <= 0) {
      say(ClaimKind::kRate, words_.say(Words{"No hours are on record, so that nothing can be said of rates.",
                                             "No constan horas, así que de las tasas no puede decirse nada."}));
      return;
    }
    if (all.injuries == 0) {
      say(ClaimKind::kRate,
          words_.say({"No injury was written down in {} player-hours. The true rate may be anything up to {} in 1000 "
                      "hours, or injuries were not written down.",
                      "No se anotó ninguna lesión en {} horas de jugador. La tasa verdadera puede ser cualquiera hasta "
                      "{} por 1000 horas, o hubo lesiones que no se anotaron."},
                     words_.grouped(all.hours), words_.in_digits(1000 * all.limits.high)));
      return;
    }
    const Sentence<3> injuries =
        is_one(all.injuries)
            ? Sentence<3>{"{} injury in {} player-hours: {}.", "{} lesión en {} horas de jugador: {}."}
            : Sentence<3>{"{} injuries in {} player-hours: {}.", "{} lesiones en {} horas de jugador: {}."};
    say(ClaimKind::kRate,
        capital(words_.say(injuries, count(all.injuries), words_.grouped(all.hours), rate_words(all))));
  }

  [[nodiscard]] std::string rate_words(const RateRow& row) const {
    if (is_withheld(reader_, row.injuries))
      return words_.say(Words{"too few for a rate here", "demasiado pocas para dar aquí una tasa"});
    return words_.say({"{} in 1000 hours ({})", "{} por 1000 horas ({})"}, words_.in_digits(1000 * row.per_hour()),
                      interval_words(found_.asked.level, words_.limits_words(row.limits, 1000), words_));
  }

  void days() {
    const RateRow& all = whole();
    if (all.injuries == 0 || is_withheld(reader_, all.injuries)) return;
    const std::string least = all.open > 0 ? words_.say(Words{"at least ", "al menos "}) : "";
    const Sentence<3> cost = all.median_days == 1
                                 ? Sentence<3>{"They cost {}{} days, half of them {} day or more.",
                                               "Costaron {}{} días; la mitad de ellas, {} día o más."}
                                 : Sentence<3>{"They cost {}{} days, half of them {} days or more.",
                                               "Costaron {}{} días; la mitad de ellas, {} días o más."};
    std::string text = words_.say(cost, least, words_.grouped(all.days), words_.as_counted(all.median_days));
    const int longest = found_.severity.back().injuries;
    if (longest > 0) {
      const Sentence<1> kept = is_one(longest)
                                   ? Sentence<1>{" {} kept a player out for more than four weeks.",
                                                 " {} tuvo a un jugador de baja más de cuatro semanas."}
                                   : Sentence<1>{" {} kept a player out for more than four weeks.",
                                                 " {} tuvieron a un jugador de baja más de cuatro semanas."};
      text += words_.say(kept, capital(count(longest)));
    }
    say(ClaimKind::kDays, text);
  }

  static std::string capital(std::string text) {
    if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
    return text;
  }

  void matches() {
    if (!found_.matches_by_training) return;
    const Compared& c = *found_.matches_by_training;
    if (is_withheld(reader_, static_cast<int>(c.one.events)) || is_withheld(reader_, static_cast<int>(c.other.events)))
      return;
    const std::string ratio = words_.in_digits(c.ratio, 2);
    const std::string limits = words_.limits_words(c.exact.limits);
    switch (verdict(c.exact.limits)) {
      case Verdict::kMore:
        say(ClaimKind::kMatches, words_.say({"An hour of match had {} times the injuries of an hour of training ({}).",
                                             "Una hora de partido tuvo {} veces las lesiones de una de entrenamiento "
                                             "({})."},
                                            ratio, limits));
        return;
      case Verdict::kFewer:
        say(ClaimKind::kMatches,
            words_.say({"An hour of match had fewer injuries than an hour of training: {} times ({}).",
                        "Una hora de partido tuvo menos lesiones que una de entrenamiento: {} veces ({})."},
                       ratio, limits));
        return;
      default:
        say(ClaimKind::kMatches,
            words_.say({"Whether an hour of match or of training has more injuries cannot be told from so few ({} "
                        "times).",
                        "Con tan pocas no puede decirse si una hora de partido tiene más lesiones que una de "
                        "entrenamiento, o menos ({} veces)."},
                       limits));
    }
  }

  void reach() {
    const Reach& reach = found_.reach;
    std::array<int, records::kWarmUps + 1> sessions{};
    double first = 0;
    double second = 0;
    int in_both_halves = 0;
    for (const SquadReach& squad : reach.squads) {
      for (std::size_t w = 0; w < sessions.size(); ++w) sessions[w] += squad.sessions[w];
      if (!squad.first_half || !squad.second_half) continue;
      first += *squad.first_half;
      second += *squad.second_half;
      ++in_both_halves;
    }
    const int known = sessions[0] + sessions[1] + sessions[2] + sessions[3];
    if (known == 0) {
      say(ClaimKind::kReach, words_.say(Words{"Of no session is it known whether the warm-up was done.",
                                              "De ninguna sesión se sabe si se hizo el calentamiento."}));
      return;
    }
    say(ClaimKind::kReach, squads_reached() + done_words(sessions, known));
    if (in_both_halves == 0) return;
    say(ClaimKind::kReach,
        words_.say({"A squad did {} warm-ups a week in the first half of the season, {} in the second.",
                    "Un equipo hizo {} calentamientos por semana en la primera mitad de la temporada y {} en la "
                    "segunda."},
                   words_.in_digits(first / in_both_halves, 2), words_.in_digits(second / in_both_halves, 2)));
  }

  [[nodiscard]] std::string squads_reached() const {
    const Reach& reach = found_.reach;
    const Sentence<3> did = reach.reached() == 1
                                ? Sentence<3>{"{} of {} did the warm-up at least once, {} once a week or more. ",
                                              "{} de {} hizo el calentamiento al menos una vez; {}, una vez por semana "
                                              "o más. "}
                                : Sentence<3>{"{} of {} did the warm-up at least once, {} once a week or more. ",
                                              "{} de {} hicieron el calentamiento al menos una vez; {}, una vez por "
                                              "semana o más. "};
    return words_.say(did, reach.reached(),
                      words_.counted(static_cast<long long>(reach.squads.size()), {"one squad", "un equipo"},
                                     {"{} squads", "{} equipos"}),
                      reach.taken_up());
  }

  // Sessions by how many did it, of those of which it is known. Where none is written down as not done, that is what is
  // said, and no '0 %': who leaves a warm-up out seldom writes so.
  [[nodiscard]] std::string done_words(const std::array<int, records::kWarmUps + 1>& sessions, int known) const {
    const auto share = [&](std::size_t w) { return words_.percent(static_cast<double>(sessions[w]) / known); };
    const std::string of_sessions = words_.percent(static_cast<double>(known) / (known + sessions[4]));
    if (sessions[3] == 0)
      return words_.say({"Where it is known ({} of sessions) most players did it in {}, half in {}, few in {}; that it "
                         "was not done is written down of none, which does not mean that it always was.",
                         "Donde se sabe ({} de las sesiones) lo hizo la mayoría en el {}, la mitad en el {} y pocos en "
                         "el {}; de ninguna consta que no se hiciera, lo que no significa que se hiciera siempre."},
                        of_sessions, share(0), share(1), share(2));
    return words_.say(
        {"Where it is known ({} of sessions) most players did it in {}, half in {}, few in {}; in {} it "
         "was not done.",
         "Donde se sabe ({} de las sesiones) lo hizo la mayoría en el {}, la mitad en el {} y pocos en el "
         "{}; en el {} no se hizo."},
        of_sessions, share(0), share(1), share(2), share(3));
  }

  void warm_ups() {
    const WarmUpModel& model = found_.warm_ups;
    if (model.why_not) {
      // What to do about it is advice for who asks for a model by hand.
      const std::string reason = model.why_not->substr(0, model.why_not->find(';'));
      say(ClaimKind::kWarmUps, words_.say({"Whether warm-ups go with fewer injuries cannot be estimated: {}.",
                                           "No puede estimarse si los calentamientos van con menos lesiones: {}."},
                                          reason) +
                                   more_hours());
      return;
    }
    if (is_withheld(reader_, model.events)) {
      say(ClaimKind::kWarmUps, words_.say(Words{"Too few injuries to say anything about warm-ups.",
                                                "Demasiado pocas lesiones para decir algo de los calentamientos."}));
      return;
    }
    const std::string with = words_.say({"with each warm-up a week more, the rate was {} times what it was ({})",
                                         "por cada calentamiento semanal más, la tasa fue {} veces la que era ({})"},
                                        words_.in_digits(model.times, 2),
                                        interval_words(found_.asked.level, words_.limits_words(model.limits), words_));
    switch (verdict(model.limits)) {
      case Verdict::kFewer:
        say(ClaimKind::kWarmUps,
            words_.say({"Squads had fewer injuries in weeks after more warm-ups: {}. That the two go together does not "
                        "show that the one makes the other.",
                        "Los equipos tuvieron menos lesiones en las semanas tras más calentamientos: {}. Que ambas "
                        "cosas vayan juntas no muestra que una produzca la otra."},
                       with));
        averted();
        return;
      case Verdict::kMore:
        say(ClaimKind::kWarmUps,
            words_.say(
                {"Squads had more injuries in weeks after more warm-ups: {}. Look first at who writes what down, "
                 "and at which squads were told to warm up because they had injuries.",
                 "Los equipos tuvieron más lesiones en las semanas tras más calentamientos: {}. Mire primero "
                 "quién anota qué, y a qué equipos se les dijo que calentaran porque tenían lesiones."},
                with));
        return;
      case Verdict::kNoneThatMatters:
        say(ClaimKind::kWarmUps,
            words_.say({"No difference that matters is seen: {}.", "No se ve ninguna diferencia que importe: {}."},
                       with));
        return;
      case Verdict::kTooEarly:
        out_.push_back({ClaimKind::kWarmUps,
                        words_.say({"Too early to tell whether warm-ups go with fewer injuries: {}, so that fewer and "
                                    "more are both possible.",
                                    "Demasiado pronto para decir si los calentamientos van con menos lesiones: {}, así "
                                    "que caben tanto menos como más."},
                                   with) +
                            more_hours(),
                        true});
    }
  }

  void averted() {
    if (!found_.warm_ups.averted) return;
    const Averted& a = *found_.warm_ups.averted;
    if (a.limits.low <= 0) return;
    const auto whole_number = [&](double value) { return words_.as_counted(std::round(value)); };
    say(ClaimKind::kWarmUps,
        words_.say({"If it were cause and effect, the season's warm-ups would have spared about {} injuries ({}).",
                    "Si fuera causa y efecto, los calentamientos de la temporada habrían ahorrado unas {} lesiones "
                    "({})."},
                   whole_number(a.injuries), words_.from_to(whole_number(a.limits.low), whole_number(a.limits.high))));
  }

  [[nodiscard]] std::string more_hours() const {
    if (!found_.hours_wanted) return {};
    const HoursWanted& wanted = *found_.hours_wanted;
    if (wanted.more <= 0)
      return words_.say(
          Words{" There are hours enough to see a third fewer were half of them with warm-ups; a smaller difference "
                "takes longer.",
                " Hay horas suficientes para ver un tercio menos si la mitad fueran con calentamiento; una diferencia "
                "menor requiere más tiempo."});
    return words_.say({" To see a third fewer, about {} more hours are needed, {} seasons like this one in all.",
                       " Para ver un tercio menos hacen falta unas {} horas más: en total, {} temporadas como esta."},
                      words_.grouped(roughly(wanted.more)), words_.in_digits(wanted.seasons, 2));
  }

  void squads() {
    if (!found_.squads || is_withheld(reader_, whole().injuries)) return;
    int outside = 0;
    for (const SquadFinding& squad : found_.squads->squads) {
      const double ratio = squad.injuries / squad.expected;
      if (ratio < squad.outer.low || ratio > squad.outer.high) ++outside;
    }
    if (outside == 0) {
      say(ClaimKind::kSquads, words_.say(Words{"No squad lies outside what chance makes of its hours.",
                                               "Ningún equipo queda fuera de lo que el azar hace con sus horas."}));
      return;
    }
    const std::string lie =
        words_.counted(outside, {"One squad lies", "Un equipo queda"}, {"{} squads lie", "{} equipos quedan"});
    say(ClaimKind::kSquads,
        words_.say({"{} outside what chance makes of so many hours: a reason to ask, not a verdict.",
                    "{} fuera de lo que el azar hace con tantas horas: un motivo para preguntar, no un veredicto."},
                   lie));
  }

  void watch() {
    if (!found_.watched) return;
    int alarms = 0;
    for (const evidence::WatchedWeek& week : found_.watched->weeks) alarms += week.alarm ? 1 : 0;
    const std::string chance = words_.in_digits(found_.watched->false_alarms, 2);
    if (alarms == 0) {
      say(ClaimKind::kWatch,
          words_.say({"Watched week by week, the rate gave no alarm; {} such alarms a season are to be expected by "
                      "chance.",
                      "Vigilada semana a semana, la tasa no dio ningún aviso; por azar son de esperar {} avisos así "
                      "por temporada."},
                     chance));
      return;
    }
    say(ClaimKind::kWatch,
        words_.say({"Watched week by week, the rate gave {}; {} such alarms a season are to be expected by chance. An "
                    "alarm is a reason to look.",
                    "Vigilada semana a semana, la tasa dio {}; por azar son de esperar {} avisos así por temporada. Un "
                    "aviso es un motivo para mirar."},
                   words_.counted(alarms, {"one alarm", "un aviso"}, {"{} alarms", "{} avisos"}), chance));
  }

  void cautions() {
    say(ClaimKind::kCaution,
        words_.say(
            Words{"Squads that write down their warm-ups may also write down injuries better; then warm-ups look "
                  "worse than they are. Squads that warm up may differ in much else.",
                  "Los equipos que anotan sus calentamientos quizá anoten también mejor las lesiones; entonces "
                  "los calentamientos parecen peores de lo que son. Los equipos que calientan pueden diferir en "
                  "mucho más."}));
  }
};

}  // namespace

std::string count_for(Reader reader, int count, Language language) {
  return is_withheld(reader, count) ? Speaker(language).say({"fewer than {}", "menos de {}"}, kSmallCell)
                                    : std::to_string(count);
}

bool is_withheld(Reader reader, int count) { return reader == Reader::kBoard && count > 0 && count < kSmallCell; }

std::vector<Claim> claims(const SeasonFindings& found, Reader reader) { return Sentences(found, reader).all(); }

bool is_for_summary(const Claim& claim) {
  const bool beside = claim.kind == ClaimKind::kTaught || claim.kind == ClaimKind::kOften;
  return !beside || !claim.too_early;
}

Verdict verdict(const evidence::Interval& ratio) {
  if (ratio.high < 1) return Verdict::kFewer;
  if (ratio.low > 1) return Verdict::kMore;
  if (ratio.low > 1 / kMattersLittle && ratio.high < kMattersLittle) return Verdict::kNoneThatMatters;
  return Verdict::kTooEarly;
}

}  // namespace lanework::findings
