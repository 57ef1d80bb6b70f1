// Sheets to a season. Read strictly: what is not understood, or names nothing that exists, is a fault with its line and
// heading, and every faulty row has one. What is understood and odd is a question (questions.h).
#pragma once

#include <optional>
#include <vector>

#include "core/people/roster_sheet.h"
#include "core/records/mapping.h"
#include "core/records/questions.h"
#include "core/records/season.h"
#include "core/records/terms.h"

namespace lanework::records {

inline constexpr std::size_t kMostRecordRows = 500'000;  // of one sheet

struct SeasonSheets {
  people::Sheet squads;
  people::Sheet hours;
  people::Sheet injuries;
  std::optional<people::Sheet> players;
};

struct SeasonReading {
  const Terms* terms = nullptr;
  const Mapping* mapping = nullptr;
  Period period;
  people::TextForms forms;
  Language language = Language::kEnglish;  // of the questions
};

struct ReadSeason {
  // After faults it lacks the rows they are in, squads apart: good for the questions of a dry run, never for an
  // evaluation.
  Season season;
  SeasonPlaces places;
  Faults faults;                         // by sheet and line
  std::vector<Question> outside_period;  // rows that were left out because the period does not hold their day
};

ReadSeason read_season(const SeasonSheets& sheets, const SeasonReading& reading);

// The squads alone, or the faults of their sheet.
Result<std::vector<SquadRecord>> read_squad_sheet(const people::Sheet& sheet, const SeasonReading& reading);

// The season, or the faults that stand in its way.
Result<Season> season_of(ReadSeason read);

// How well a sheet reads as one of its kind: known headings in its best row. Tells one delimiter from another.
int count_known_headings(const people::Sheet& sheet, SheetKind kind, const Mapping& mapping,
                         const people::TextForms& forms);

}  // namespace lanework::records
