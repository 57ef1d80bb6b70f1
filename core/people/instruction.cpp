#include "core/people/instruction.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <iterator>
#include <string_view>
#include <vector>

namespace lanework::people {
namespace {

constexpr int kLight = 1;
constexpr int kHeavy = 3;
constexpr int kWhole = 100;

// What each kind of stress is to a coach, in the order of StressKind.
const std::vector<std::vector<std::string>>& avoided() {
  static const std::vector<std::vector<std::string>> kWords = {{"strength work"},    {"deep stretching"}, {"jumping"},
                                                               {"twisting"},         {"fast running"},    {"contact"},
                                                               {"kneeling", "lying"}};
  return kWords;
}

// Words that name an area of the body, or what is the matter; whole words, lower case, also in the plural.
constexpr std::string_view kPrivate[] = {
    "knee",      "ankle",       "hip",      "groin",   "thigh",     "hamstring",  "quad",      "shin",
    "calf",      "calve",       "shoulder", "elbow",   "wrist",     "neck",       "spine",     "rib",
    "skull",     "achilles",    "pelvis",   "tendon",  "ligament",  "meniscus",   "cartilage", "concussion",
    "concussed", "sprain",      "sprained", "strain",  "strained",  "fracture",   "fractured", "tear",
    "torn",      "rupture",     "ruptured", "surgery", "operation", "tendinitis", "arthritis", "injury",
    "injurie",   "injured",     "illness",  "disease", "asthma",    "epilepsy",   "diabetes",  "seizure",
    "pregnant",  "inflammation"};

std::string joined(const std::vector<std::string>& words) {
  std::string out;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) out += i + 1 == words.size() ? " or " : ", ";
    out += words[i];
  }
  return out;
}

std::string from_kinds(const Restriction& restriction) {
  if (restriction.allowed_grade >= kHeavy) return {};
  if (restriction.kinds.empty()) {
    if (restriction.allowed_grade == 0) return "only what this page names";
    return restriction.allowed_grade == kLight ? "only light work" : "no heavy work";
  }
  std::vector<catalogue::StressKind> kinds = restriction.kinds;
  std::sort(kinds.begin(), kinds.end());
  kinds.erase(std::unique(kinds.begin(), kinds.end()), kinds.end());
  std::vector<std::string> words;
  for (const catalogue::StressKind kind : kinds) {
    for (const std::string& word : avoided().at(static_cast<std::size_t>(kind))) words.push_back(word);
  }
  if (restriction.allowed_grade == 0) return "no " + joined(words);
  return (restriction.allowed_grade == kLight ? "only light " : "no heavy ") + joined(words);
}

// What is counted, not barred.
std::string from_counts(const Restriction& restriction) {
  std::string out;
  if (restriction.landings_percent < kWhole) out = restriction.landings_percent == 0 ? "no landings" : "fewer jumps";
  if (!restriction.new_eccentric_ok) out += std::string(out.empty() ? "" : "; ") + "no new slow-lowering drill";
  return out;
}

std::string made_words(const Restriction& restriction) {
  const std::string barred = from_kinds(restriction);
  const std::string counted = from_counts(restriction);
  if (barred.empty() && counted.empty()) return "may do everything";
  return barred + (barred.empty() || counted.empty() ? "" : "; ") + counted;
}

std::string short_date(Date date, std::optional<Date> tonight) {
  constexpr int kHalfAYear = 183;
  constexpr std::array<const char*, 12> kMonths = {"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                                   "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
  const CivilDate day = civil(date);
  std::string out = std::to_string(day.day) + " " + kMonths.at(static_cast<std::size_t>(day.month - 1));
  if (tonight && days_between(*tonight, date) > kHalfAYear) out += " " + std::to_string(day.year);
  return out;
}

bool is_private(std::string_view word) {
  const auto known = [](std::string_view w) {
    return std::find(std::begin(kPrivate), std::end(kPrivate), w) != std::end(kPrivate);
  };
  return known(word) || (word.size() > 1 && word.back() == 's' && known(word.substr(0, word.size() - 1)));
}

}  // namespace

std::string instruction_for(const Restriction& restriction, std::optional<Date> tonight) {
  std::string out = restriction.instruction;
  if (out.empty()) out = restriction.sits_out ? "sits out" : made_words(restriction);
  if (restriction.until) out += " until " + short_date(*restriction.until, tonight);
  return out;
}

std::string private_word_in(const std::string& instruction) {
  std::string word;
  for (std::size_t i = 0; i <= instruction.size(); ++i) {
    const unsigned char c = i < instruction.size() ? static_cast<unsigned char>(instruction[i]) : ' ';
    if (std::isalpha(c) != 0) {
      word += static_cast<char>(std::tolower(c));
      continue;
    }
    if (is_private(word)) return word;
    word.clear();
  }
  return {};
}

}  // namespace lanework::people
