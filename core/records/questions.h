// What can be read, but somebody should look at. A question is never answered here: the rows stay as they are.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/base/two_languages.h"
#include "core/records/season.h"

namespace lanework::records {

enum class QuestionKind : std::uint8_t {
#define LANEWORK_QUESTION(name, key) name,
#include "core/records/questions.def"
#undef LANEWORK_QUESTION
};
const char* question_key(QuestionKind kind);  // part of the JSON contract

struct Question {
  QuestionKind kind;
  Place place;           // of the row; of its file alone where it is about a whole squad
  std::string sentence;  // without the places
  int other_line = 0;    // of the same file, where it is about two rows
};

// 'hours.csv:12: u13-kestrels on 2026-11-24: 8 h of training, longer than 6 h', 'hours.csv:13 and 12: ...'
std::string to_line(const Question& question, Language language = Language::kEnglish);

// Own judgement, all of them.
inline constexpr int kLongSessionMinutes = 6 * 60;
inline constexpr int kShortSessionMinutes = 10;
inline constexpr PlayerMinutes kManySessionHours{600 * 60};

// About single rows and pairs of them: also of use where other rows are at fault.
std::vector<Question> questions_about_rows(const Season& season, const SeasonPlaces& places, Language language);

// About a squad's whole season. REQUIRES: no row was at fault, or what it would have said is asked about.
std::vector<Question> questions_about_squads(const Season& season, const SeasonPlaces& places, Language language);

}  // namespace lanework::records
