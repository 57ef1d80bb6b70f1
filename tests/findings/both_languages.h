// The same said in two languages: the numbers in a text, and English words that a Spanish one has no use for.
#pragma once

#include <cctype>
#include <set>
#include <string>
#include <vector>

#include "core/base/two_languages.h"

namespace lanework {

// Numbers in their order as English writes them, thousands together: '28350', '1.30', '95'.
inline std::vector<std::string> numbers_in(const std::string& text, Language language) {
  const std::string apart = "\u00A0";
  std::string plain = text;
  for (std::size_t at = plain.find(apart); at != std::string::npos; at = plain.find(apart, at))
    plain.erase(at, apart.size());
  const char mark = language == Language::kSpanish ? ',' : '.';
  const auto digit = [&](std::size_t at) {
    return at < plain.size() && std::isdigit(static_cast<unsigned char>(plain[at])) != 0;
  };
  std::vector<std::string> out;
  for (std::size_t at = 0; at < plain.size(); ++at) {
    if (!digit(at)) continue;
    std::string number;
    for (; digit(at) || (at < plain.size() && plain[at] == mark && digit(at + 1)); ++at)
      number += plain[at] == mark ? '.' : plain[at];
    out.push_back(number);
  }
  return out;
}

// The first of the English words that stand in most English sentences and in no Spanish one; empty where there is none.
inline std::string english_word_in(const std::string& text) {
  static const std::set<std::string> kEnglish = {
      "the",    "of",      "and",     "in",    "is",     "are",   "was",      "were",   "to",       "with",  "by",
      "or",     "not",     "than",    "that",  "this",   "which", "who",      "had",    "have",     "for",   "at",
      "on",     "from",    "week",    "weeks", "season", "hours", "hour",     "injury", "injuries", "squad", "squads",
      "warm",   "ups",     "limits",  "rate",  "rates",  "match", "training", "player", "players",  "days",  "day",
      "known",  "none",    "one",     "fewer", "more",   "most",  "half",     "few",    "told",     "too",   "early",
      "monday", "january", "october", "first", "each",   "as"};
  std::string word;
  for (const char c : text + " ") {
    if (std::isalpha(static_cast<unsigned char>(c)) != 0 || static_cast<unsigned char>(c) >= 0x80) {
      word += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
      continue;
    }
    if (kEnglish.contains(word)) return word;
    word.clear();
  }
  return {};
}

}  // namespace lanework
