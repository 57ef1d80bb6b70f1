#include "app/draw/card_words.h"

#include <array>
#include <cstdio>
#include <regex>

namespace lanework::draw::words {

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
  static const std::regex kDuration("([0-9]+) (min|s)\\b");
  static const std::regex kRest("min ([0-9]+\u00A0s)\\b");
  const std::string numbers = std::regex_replace(sentence, kDuration, "$1\u00A0$2");
  return std::regex_replace(numbers, kRest, "min\u00A0$1");
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
