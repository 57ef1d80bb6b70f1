#include <cmath>

#include "app/cli/evidence/season_page/sections.h"
#include "core/findings/small_cells.h"

namespace lanework::cli {
namespace {

using evidence::NumberWords;
using findings::RateRow;
using findings::RateTable;

constexpr Words kInjuries{"injuries", "lesiones"};
constexpr Words kWithheld{"fewer than 5", "menos de 5"};

std::vector<bool> withheld(const RateTable& table, findings::Reader reader) {
  std::vector<int> counts;
  for (const RateRow& row : table.rows) counts.push_back(row.injuries);
  return findings::withheld_rows(counts, reader);
}

std::string burden_words(const RateRow& row, const NumberWords& words) {
  if (!row.burden || row.injuries == 0) return "-";
  const evidence::Burden& burden = *row.burden;
  const bool useless = !std::isfinite(burden.limits.high) || burden.limits.high > 20 * burden.days_an_hour;
  return words.in_digits(1000 * burden.days_an_hour) + " (" +
         (useless ? words.say({"{} and upwards", "{} o más"}, words.in_digits(1000 * burden.limits.low))
                  : words.limits_words(burden.limits, 1000)) +
         ")";
}

// open: how many of the injuries are open is told.
std::vector<std::string> cells(const RateRow& row, bool hidden, bool open, bool rates_stand, const NumberWords& words) {
  if (hidden) return {row.label, words.say(kWithheld), words.as_counted(std::round(row.hours)), "-", "-", "-", "-"};
  const bool rate = row.hours > 0 && rates_stand;
  return {row.label,
          std::to_string(row.injuries) + (open && row.open > 0
                                              ? words.say(row.open == 1 ? Sentence<1>{" ({} open)", " ({} abierta)"}
                                                                        : Sentence<1>{" ({} open)", " ({} abiertas)"},
                                                          row.open)
                                              : ""),
          row.hours > 0 ? words.as_counted(std::round(row.hours)) : words.say(Words{"not known", "no se sabe"}),
          rate ? words.in_digits(1000 * row.per_hour()) + " (" + words.limits_words(row.limits, 1000) + ")" : "-",
          words.as_counted(row.days),
          row.injuries > 0 ? words.as_counted(row.median_days) : "-",
          rates_stand ? burden_words(row, words) : "-"};
}

report::Table table_of(const RateTable& rates, const std::string& caption, findings::Reader reader) {
  const NumberWords words(rates.language);
  report::Table table{caption,
                      {{"", false},
                       {words.say(rates.of_diagnoses ? Words{"diagnoses", "diagnósticos"} : kInjuries), true},
                       {words.say(Words{"hours", "horas"}), true},
                       {words.say(Words{"in 1000 hours", "por 1000 horas"}), true},
                       {words.say(Words{"days lost", "días perdidos"}), true},
                       {words.say(Words{"median days", "mediana de días"}), true},
                       {words.say(Words{"days in 1000 hours", "días por 1000 horas"}), true}},
                      {}};
  const std::vector<bool> hidden = withheld(rates, reader);
  // The board is told how many are open in all, not of which kind: a small count could be had by subtraction.
  const bool open = reader == findings::Reader::kLead ||
                    (rates.by == findings::GroupBy::kWhole && !findings::is_withheld(reader, rates.rows.front().open));
  for (std::size_t i = 0; i < rates.rows.size(); ++i) {
    table.rows.push_back(cells(rates.rows[i], hidden[i], open, rates.rates_stand, words));
  }
  return table;
}

report::Intervals intervals_of(const RateTable& rates, findings::Reader reader) {
  report::Intervals out;
  out.x_title =
      Speaker(rates.language)
          .say(rates.of_diagnoses ? Words{"diagnoses in 1000 player-hours", "diagnósticos por 1000 horas de jugador"}
                                  : Words{"injuries in 1000 player-hours", "lesiones por 1000 horas de jugador"});
  const std::vector<bool> hidden = withheld(rates, reader);
  for (std::size_t i = 0; i < rates.rows.size(); ++i) {
    const RateRow& row = rates.rows[i];
    if (hidden[i] || row.hours <= 0) continue;
    out.rows.push_back({row.label, 1000 * row.per_hour(), 1000 * row.limits.low, 1000 * row.limits.high,
                        std::to_string(row.injuries)});
  }
  return out;
}

report::Chart chart_of(const std::string& id, const std::string& title, const RateTable& rates, const RateRow& whole,
                       findings::Reader reader) {
  report::Intervals data = intervals_of(rates, reader);
  if (!rates.of_diagnoses && whole.injuries > 0 && whole.hours > 0)
    data.reference = report::Reference{1000 * whole.per_hour(), whole.label};
  return {
      id, title,
      Speaker(rates.language)
          .say(Words{"Each bar is as wide as the rate is uncertain (95 % exact limits); the stroke in it is what was "
                     "seen.",
                     "Cada barra es tan ancha como incierta es la tasa (intervalo de confianza exacto del 95 %); el "
                     "trazo en ella es lo que se vio."}),
      std::move(data), table_of(rates, title, reader)};
}

// The board is told that they are many, not how many.
report::Paragraph no_rates(const std::string& title, const RateTable& rates, findings::Reader reader) {
  const Speaker speaker(rates.language);
  if (reader == findings::Reader::kLead) {
    const Sentence<3> known =
        rates.of_diagnoses
            ? Sentence<3>{"{}: for {} of {} diagnoses it is not known where they belong, so no rate of a group is given. "
                          "It would be too low.",
                          "{}: de {} de {} diagnósticos no se sabe a qué grupo pertenecen, así que no se da la tasa de "
                          "ningún grupo. Sería demasiado baja."}
            : Sentence<3>{"{}: for {} of {} injuries it is not known where they belong, so no rate of a group is given. "
                          "It would be too low.",
                          "{}: de {} de {} lesiones no se sabe a qué grupo pertenecen, así que no se da la tasa de "
                          "ningún grupo. Sería demasiado baja."};
    return {speaker.say(known, title, rates.unknown, rates.injuries)};
  }
  const Sentence<1> many =
      rates.of_diagnoses
          ? Sentence<1>{"{}: for more than a tenth of the diagnoses it is not known where they belong, so no rate of a "
                        "group is given. It would be too low.",
                        "{}: de más de una décima parte de los diagnósticos no se sabe a qué grupo pertenecen, así que no "
                        "se da la tasa de ningún grupo. Sería demasiado baja."}
          : Sentence<1>{"{}: for more than a tenth of the injuries it is not known where they belong, so no rate of a "
                        "group is given. It would be too low.",
                        "{}: de más de una décima parte de las lesiones no se sabe a qué grupo pertenecen, así que no se "
                        "da la tasa de ningún grupo. Sería demasiado baja."};
  return {speaker.say(many, title)};
}

report::Table severity_of(const findings::SeasonFindings& found, findings::Reader reader) {
  const Speaker speaker(found.asked.language);
  report::Table table{
      speaker.say(Words{"Injuries by the days they cost", "Lesiones según los días que costaron (gravedad)"}),
      {{"", false}, {speaker.say(kInjuries), true}},
      {}};
  const bool open = reader == findings::Reader::kLead;
  if (open) table.columns.push_back({speaker.say(Words{"of them open", "de ellas, abiertas"}), true});
  std::vector<int> counts;
  for (const findings::SeverityRow& row : found.severity) counts.push_back(row.injuries);
  const std::vector<bool> hidden = findings::withheld_rows(counts, reader);
  for (std::size_t i = 0; i < counts.size(); ++i) {
    const findings::SeverityRow& row = found.severity[i];
    table.rows.push_back({speaker.say(row.label), hidden[i] ? speaker.say(kWithheld) : std::to_string(row.injuries)});
    if (open) table.rows.back().push_back(std::to_string(row.open));
  }
  return table;
}

report::Chart weeks_chart(const SeasonPageMatter& matter) {
  const NumberWords words = words_of(matter);
  const std::string injuries = words.say(kInjuries);
  const std::string training = words.say(Words{"training", "entrenamiento"});
  const std::string match = words.say(Words{"match", "partido"});
  report::Weeks data{words.say(Words{"player-hours", "horas de jugador"}), injuries, {training, match}, {}};
  report::Table table{
      words.say(Words{"Hours and injuries week by week", "Horas y lesiones semana a semana"}),
      {{words.say(Words{"week from", "semana del"}), false}, {training, true}, {match, true}, {injuries, true}},
      {}};
  for (const findings::SeasonWeek& week : matter.found->weeks) {
    const std::string label = to_iso(week.monday);
    data.weeks.push_back({label, {week.training_hours, week.match_hours}, week.injuries});
    table.rows.push_back({label, words.as_counted(std::round(week.training_hours)),
                          words.as_counted(std::round(week.match_hours)), std::to_string(week.injuries)});
  }
  return {
      "weeks", words.say(Words{"The season week by week", "La temporada semana a semana"}),
      words.say(Words{"Bars are player-hours of training and matches, marks above them injuries.",
                      "Las barras son horas de jugador de entrenamientos y partidos; las marcas encima, lesiones."}),
      std::move(data), std::move(table)};
}

}  // namespace

std::vector<report::Section> rate_sections(const SeasonPageMatter& matter) {
  const findings::SeasonFindings& found = *matter.found;
  const RateRow& whole = found.whole.rows.front();
  const NumberWords words = words_of(matter);
  const auto put = [&](report::Section& section, const Words& heading, const RateTable& rates, const char* chart_id) {
    const std::string title = words.say(heading);
    if (!rates.rates_stand) section.blocks.emplace_back(no_rates(title, rates, matter.reader));
    if (chart_id != nullptr && rates.rates_stand) {
      section.blocks.emplace_back(chart_of(chart_id, title, rates, whole, matter.reader));
    } else {
      section.blocks.emplace_back(table_of(rates, title, matter.reader));
    }
  };
  report::Section all{words.say(Words{"Injuries", "Lesiones"}), 1, {}};
  if (matter.reader == findings::Reader::kLead) all.blocks.emplace_back(weeks_chart(matter));
  all.blocks.emplace_back(table_of(found.whole, words.say(Words{"All injuries", "Todas las lesiones"}), matter.reader));
  all.blocks.emplace_back(severity_of(found, matter.reader));
  if (whole.injuries == 0) return {std::move(all)};
  report::Section where{words.say(Words{"When and to whom", "Cuándo y a quién"}), 2, {}};
  put(where, {"Training and matches", "Entrenamientos y partidos"}, found.settings, "settings");
  put(where, {"Age bands", "Categorías de edad"}, found.ages, "ages");
  put(where, {"Girls and boys", "Chicas y chicos"}, found.sexes, nullptr);
  report::Section what{words.say(Words{"What kind", "De qué tipo"}), 2, {}};
  put(what, {"Body regions", "Regiones corporales"}, found.regions, "regions");
  put(what, {"Tissues", "Tejidos"}, found.tissues, nullptr);
  put(what, {"How they began", "Cómo empezaron"}, found.onsets, nullptr);
  put(what, {"Contact", "Contacto"}, found.contacts, nullptr);
  put(what, {"First and recurrent ones", "Primeras y recurrentes"}, found.histories, nullptr);
  // Beside the table above it, its rows would give small counts away.
  if (matter.reader == findings::Reader::kLead)
    put(what, {"First and later ones", "Primeras y posteriores"}, found.recurrences, nullptr);
  return {std::move(all), std::move(where), std::move(what)};
}

}  // namespace lanework::cli
