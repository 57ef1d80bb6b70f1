#include "core/records/questions.h"

#include <algorithm>
#include <array>

#include "core/records/row_questions.h"
#include "core/records/weeks.h"

namespace lanework::records {
namespace {

// 'week of 2026-11-02, 2026-11-09 and 4 more'
std::string mondays_in_words(const std::vector<Date>& mondays, const Speaker& speaker) {
  constexpr std::size_t kListed = 3;
  std::string out = speaker.say(mondays.size() == 1 ? Words{"the week of ", "la semana del "}
                                                    : Words{"the weeks of ", "las semanas del "});
  for (std::size_t i = 0; i < std::min(kListed, mondays.size()); ++i) out += (i == 0 ? "" : ", ") + to_iso(mondays[i]);
  if (mondays.size() > kListed) out += speaker.say({" and {} more", " y {} más"}, mondays.size() - kListed);
  return out;
}

}  // namespace

const char* question_key(QuestionKind kind) {
  constexpr std::array kKeys = {
#define LANEWORK_QUESTION(name, key) key,
#include "core/records/questions.def"
#undef LANEWORK_QUESTION
  };
  return kKeys[static_cast<std::size_t>(kind)];
}

std::string to_line(const Question& question, Language language) {
  std::string line = question.place.file;
  if (question.place.line > 0) line += ":" + std::to_string(question.place.line);
  if (question.other_line > 0) line += Speaker(language).say({" and {}", " y {}"}, question.other_line);
  return line + ": " + question.sentence;
}

std::vector<Question> questions_about_rows(const Season& season, const SeasonPlaces& places, Language language) {
  std::vector<Question> out;
  ask_about_hours(season, places, language, out);
  ask_about_injuries(season, places, language, out);
  ask_about_players(season, places, language, out);
  return out;
}

std::vector<Question> questions_about_squads(const Season& season, const SeasonPlaces& places, Language language) {
  const Speaker speaker(language);
  std::vector<int> injuries(season.squads.size());
  for (const InjuryRecord& injury : season.injuries) ++injuries[injury.squad];
  std::vector<PlayerMinutes> hours(season.squads.size());
  for (const Exposure& exposure : season.exposures) hours[exposure.squad] += exposure.hours;

  std::vector<Question> out;
  const std::vector<SquadWeeks> weeks = weeks_with_rows(season);
  for (std::size_t i = 0; i < season.squads.size(); ++i) {
    const std::string& id = season.squads[i].id;
    const Place place = places.squads.place(i);
    if (injuries[i] > 0 && hours[i].count == 0) {
      out.push_back(
          {QuestionKind::kInjuriesWithoutHours, place,
           speaker.say(injuries[i] == 1 ? Sentence<2>{"{}: {} injury and no hours at all; no rate can be told",
                                                      "{}: {} lesión y ninguna hora; no puede darse una tasa"}
                                        : Sentence<2>{"{}: {} injuries and no hours at all; no rate can be told",
                                                      "{}: {} lesiones y ninguna hora; no puede darse una tasa"},
                       id, injuries[i])});
    }
    if (weeks[i].without.empty()) continue;
    out.push_back(
        {QuestionKind::kWeeksWithoutRows, place,
         speaker.say({"{}: hours in {} of {} weeks; none in {}", "{}: horas en {} de {} semanas; ninguna en {}"}, id,
                     weeks[i].with_rows, weeks[i].expected, mondays_in_words(weeks[i].without, speaker))});
  }
  return out;
}

}  // namespace lanework::records
