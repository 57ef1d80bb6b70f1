#include "core/records/questions.h"

#include <algorithm>
#include <array>

#include "core/records/row_questions.h"
#include "core/records/weeks.h"

namespace lanework::records {
namespace {

// 'week of 2026-11-02, 2026-11-09 and 4 more'
std::string mondays_in_words(const std::vector<Date>& mondays) {
  constexpr std::size_t kListed = 3;
  std::string out = mondays.size() == 1 ? "the week of " : "the weeks of ";
  for (std::size_t i = 0; i < std::min(kListed, mondays.size()); ++i) out += (i == 0 ? "" : ", ") + to_iso(mondays[i]);
  if (mondays.size() > kListed) out += " and " + std::to_string(mondays.size() - kListed) + " more";
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

std::string to_line(const Question& question) {
  std::string line = question.place.file;
  if (question.place.line > 0) line += ":" + std::to_string(question.place.line);
  if (question.other_line > 0) line += " and " + std::to_string(question.other_line);
  return line + ": " + question.sentence;
}

std::vector<Question> questions_about_rows(const Season& season, const SeasonPlaces& places) {
  std::vector<Question> out;
  ask_about_hours(season, places, out);
  ask_about_injuries(season, places, out);
  ask_about_players(season, places, out);
  return out;
}

std::vector<Question> questions_about_squads(const Season& season, const SeasonPlaces& places) {
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
      out.push_back({QuestionKind::kInjuriesWithoutHours, place,
                     id + ": " + std::to_string(injuries[i]) + (injuries[i] == 1 ? " injury" : " injuries") +
                         " and no hours at all; no rate can be told"});
    }
    if (weeks[i].without.empty()) continue;
    out.push_back({QuestionKind::kWeeksWithoutRows, place,
                   id + ": hours in " + std::to_string(weeks[i].with_rows) + " of " +
                       std::to_string(weeks[i].expected) + " weeks; none in " + mondays_in_words(weeks[i].without)});
  }
  return out;
}

}  // namespace lanework::records
