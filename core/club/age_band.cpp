#include "core/club/age_band.h"

#include <cstddef>

namespace lanework::club {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

bool stands_at(const std::string& text, std::size_t at, const char* word) {
  for (; *word != '\0'; ++at, ++word) {
    if (at >= text.size() || lower(text[at]) != *word) return false;
  }
  return true;
}

struct Digits {
  std::size_t start;
  std::size_t count;
};

// One or two digits behind 'u' or 'under', with at most a hyphen or a blank between.
std::optional<Digits> find_digits(const std::string& text) {
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool inside_word = i > 0 && (is_letter(text[i - 1]) || is_digit(text[i - 1]));
    if (inside_word || lower(text[i]) != 'u') continue;
    std::size_t at = stands_at(text, i, "under") ? i + 5 : i + 1;
    if (at < text.size() && (text[at] == '-' || text[at] == ' ')) ++at;
    std::size_t count = 0;
    while (at + count < text.size() && is_digit(text[at + count])) ++count;
    if (count == 1 || count == 2) return Digits{at, count};
  }
  return {};
}

}  // namespace

std::optional<int> band_in(const std::string& text) {
  const std::optional<Digits> digits = find_digits(text);
  if (!digits) return {};
  int band = 0;
  for (std::size_t i = 0; i < digits->count; ++i) band = band * 10 + (text[digits->start + i] - '0');
  return band;
}

std::string with_band(const std::string& text, int band) {
  const std::optional<Digits> digits = find_digits(text);
  if (!digits) return text;
  return text.substr(0, digits->start) + std::to_string(band) + text.substr(digits->start + digits->count);
}

}  // namespace lanework::club
