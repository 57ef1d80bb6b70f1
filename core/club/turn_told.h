// What the turn of a season tells of what it did: a code with values, and the English sentence that they make. Whoever
// says it in another language has the code (docs/formats/club.md).
#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace lanework::club {

struct TurnTold {
  std::string_view code;  // of kTurnSentences
  std::vector<std::pair<std::string_view, std::string>> values;
};

struct TurnSentence {
  std::string_view code;
  std::string_view english;  // with {value}
};

const std::vector<TurnSentence>& turn_sentences();

// 'Under-13 Kestrels becomes Under-14 Kestrels.'
std::string sentence_of(const TurnTold& told);

}  // namespace lanework::club
