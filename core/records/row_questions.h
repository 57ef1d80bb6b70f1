// Questions about rows, one function a sheet. Inside this folder only.
#pragma once

#include <vector>

#include "core/records/questions.h"

namespace lanework::records {

void ask_about_hours(const Season& season, const SeasonPlaces& places, Language language, std::vector<Question>& out);
void ask_about_injuries(const Season& season, const SeasonPlaces& places, Language language,
                        std::vector<Question>& out);
// Injuries and sessions of players before they joined, after they left, or who are not listed at all. Nothing is asked
// where nobody keeps the sheet of players.
void ask_about_players(const Season& season, const SeasonPlaces& places, Language language, std::vector<Question>& out);

}  // namespace lanework::records
