#include "core/records/completeness.h"

#include <algorithm>

namespace lanework::records {
namespace {

void count_hours(const Season& season, Completeness& out) {
  for (const Exposure& exposure : season.exposures) {
    const auto by = static_cast<std::size_t>(exposure.defaulted);
    ++out.sessions;
    out.hours += exposure.hours;
    ++out.sessions_by_default[by];
    out.hours_by_default[by] += exposure.hours;
    if (exposure.defaulted != Defaulted::kNothing && exposure.confirmed.value_or(false))
      out.hours_defaulted_and_confirmed += exposure.hours;
    if (!exposure.warm_up) ++out.sessions_warm_up_unknown;
  }
}

template <class Value>
FieldKnown known_of(const Season& season, Language language, Field field, std::optional<Value> InjuryRecord::*member) {
  const std::vector<InjuryRecord>& injuries = season.injuries;
  const auto known = [&](const InjuryRecord& injury) { return (injury.*member).has_value(); };
  return {field_key(field), std::string(field_name(field).in(language)),
          static_cast<int>(std::count_if(injuries.begin(), injuries.end(), known))};
}

void count_injuries(const Season& season, Language language, Completeness& out) {
  const std::vector<InjuryRecord>& injuries = season.injuries;
  out.diagnoses = static_cast<int>(injuries.size());
  for (const InjuryEvent& event : events_of(injuries)) {
    ++out.events;
    out.open_events += time_loss(season, event).open ? 1 : 0;
  }
  const auto named = [](const InjuryRecord& injury) { return !injury.player.empty(); };
  out.fields = {{"player", Speaker(language).say(Words{"player", "jugador"}),
                 static_cast<int>(std::count_if(injuries.begin(), injuries.end(), named))},
                known_of(season, language, Field::kSetting, &InjuryRecord::setting),
                known_of(season, language, Field::kOnset, &InjuryRecord::onset),
                known_of(season, language, Field::kContact, &InjuryRecord::contact),
                known_of(season, language, Field::kRegion, &InjuryRecord::region),
                known_of(season, language, Field::kTissue, &InjuryRecord::tissue),
                known_of(season, language, Field::kSide, &InjuryRecord::side),
                known_of(season, language, Field::kActivity, &InjuryRecord::activity),
                known_of(season, language, Field::kRecurrence, &InjuryRecord::recurrence)};
}

}  // namespace

Completeness completeness(const ReadSeason& read, Language language) {
  const Season& season = read.season;
  Completeness out;
  out.period = season.period;
  out.squads = static_cast<int>(season.squads.size());
  count_hours(season, out);
  count_injuries(season, language, out);
  out.rows_outside_period = static_cast<int>(read.outside_period.size());
  for (const SquadRecord& squad : season.squads) out.squad_ids.push_back(squad.id);
  out.weeks = weeks_with_rows(season);
  out.questions = questions_about_squads(season, read.places, language);
  const std::vector<Question> rows = questions_about_rows(season, read.places, language);
  out.questions.insert(out.questions.end(), rows.begin(), rows.end());
  out.questions.insert(out.questions.end(), read.outside_period.begin(), read.outside_period.end());
  return out;
}

}  // namespace lanework::records
