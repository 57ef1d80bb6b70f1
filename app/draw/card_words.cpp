#include "app/draw/card_words.h"

#include <array>
#include <cstdio>

namespace lanework::draw::words {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_word(char c) { return is_digit(c) || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

// 'min' or 's' as a word of its own from there on.
bool is_unit(const std::string& sentence, std::size_t at, const std::string& unit) {
  if (sentence.compare(at, unit.size(), unit) != 0) return false;
  const std::size_t end = at + unit.size();
  return end >= sentence.size() || !is_word(sentence[end]);
}

// The space of '10 s'.
bool is_before_a_unit(const std::string& sentence, std::size_t space) {
  if (space == 0 || !is_digit(sentence[space - 1])) return false;
  return is_unit(sentence, space + 1, "min") || is_unit(sentence, space + 1, "s");
}

// The space between the minutes and the seconds of '1 min 10 s'.
bool is_inside_a_duration(const std::string& sentence, std::size_t space) {
  if (space < 5 || !is_unit(sentence, space - 3, "min") || !is_digit(sentence[space - 5])) return false;
  std::size_t end = space + 1;
  while (end < sentence.size() && is_digit(sentence[end])) ++end;
  return end > space + 1 && end < sentence.size() && sentence[end] == ' ' && is_unit(sentence, end + 1, "s");
}

}  // namespace

std::string clock_time(int start_minute_of_day, int seconds_after) {
  constexpr int kMinutesADay = 24 * 60;
  const int minute = ((start_minute_of_day + seconds_after / 60) % kMinutesADay + kMinutesADay) % kMinutesADay;
  std::array<char, 16> text{};
  std::snprintf(text.data(), text.size(), "%02d:%02d", minute / 60, minute % 60);
  return text.data();
}

std::string duration(int seconds) {
  const int minutes = seconds / 60;
  const int rest = seconds % 60;
  if (minutes == 0) return std::to_string(rest) + " s";
  if (rest == 0) return std::to_string(minutes) + " min";
  return std::to_string(minutes) + " min " + std::to_string(rest) + " s";
}

std::string short_duration(int seconds) {
  if (seconds < 120) return std::to_string(seconds) + " s";
  const int halves = (seconds + 15) / 30;
  return std::to_string(halves / 2) + (halves % 2 != 0 ? "\u00BD" : "") + " min";
}

std::string durations_unbroken(const std::string& sentence) {
  std::string out;
  for (std::size_t i = 0; i < sentence.size(); ++i) {
    const bool held = sentence[i] == ' ' && (is_before_a_unit(sentence, i) || is_inside_a_duration(sentence, i));
    out += held ? "\u00A0" : std::string(1, sentence[i]);
  }
  return out;
}

std::string metres(int millimetres) {
  const int tenths = (millimetres + 50) / 100;
  std::string text = std::to_string(tenths / 10);
  if (tenths % 10 != 0) text += "." + std::to_string(tenths % 10);
  return text + " m";
}

std::string paces(int millimetres, int pace_mm) {
  const int halves = (4 * millimetres + pace_mm) / (2 * pace_mm);
  std::string text = halves >= 2 || halves == 0 ? std::to_string(halves / 2) : "";
  if (halves % 2 != 0) text += "\u00BD";
  return text + (halves == 2 || halves == 1 ? " pace" : " paces");
}

std::string counted(int count, const std::string& one, const std::string& many) {
  return std::to_string(count) + " " + (count == 1 ? one : many);
}

std::string left_out(int count) { return "and " + std::to_string(count) + " more that found no room"; }

}  // namespace lanework::draw::words
