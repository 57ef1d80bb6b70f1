#include "app/serve/sign_in/password_rule.h"

#include <algorithm>

namespace lanework::serve {
namespace {

std::string lower(std::string_view text) {
  std::string out(text);
  std::transform(out.begin(), out.end(), out.begin(),
                 [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
  return out;
}

bool is_letter(char c) { return (c >= 'a' && c <= 'z') || static_cast<unsigned char>(c) >= 0x80; }

// Without what is hung on before and behind.
std::string_view bare(std::string_view text) {
  while (!text.empty() && !is_letter(text.front())) text.remove_prefix(1);
  while (!text.empty() && !is_letter(text.back())) text.remove_suffix(1);
  return text;
}

std::size_t characters(std::string_view text) {
  return static_cast<std::size_t>(
      std::count_if(text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

}  // namespace

KnownPasswords::KnownPasswords(std::string_view list, const std::vector<std::string>& own_words) {
  while (!list.empty()) {
    const std::size_t end = std::min(list.find('\n'), list.size());
    std::string_view line = list.substr(0, end);
    list.remove_prefix(std::min(end + 1, list.size()));
    if (!line.empty() && line.back() == '\r') line.remove_suffix(1);
    if (!line.empty() && line.substr(0, 2) != "#!") known_.insert(lower(line));
  }
  for (const std::string& words : own_words) {
    std::string squeezed;
    for (const char c : lower(words)) {
      if (c != ' ') squeezed += c;
    }
    if (!squeezed.empty()) known_.insert(squeezed);
    known_.insert(lower(words));
  }
}

bool KnownPasswords::knows(std::string_view password) const {
  const std::string whole = lower(password);
  if (known_.count(whole) > 0) return true;
  const std::string_view core = bare(whole);
  if (!core.empty() && known_.count(core) > 0) return true;
  // One thing again and again: 'aaaaaaaa', 'abcabcabc'.
  for (std::size_t period = 1; period <= whole.size() / 3; ++period) {
    bool repeats = true;
    for (std::size_t i = period; i < whole.size() && repeats; ++i) repeats = whole[i] == whole[i - period];
    if (repeats) return true;
  }
  return false;
}

std::optional<std::string> why_not_password(std::string_view password, std::size_t fewest,
                                            const KnownPasswords& known) {
  if (characters(password) < fewest) return "shorter than " + std::to_string(fewest) + " characters";
  if (password.size() > kMostPasswordBytes) return "longer than " + std::to_string(kMostPasswordBytes) + " bytes";
  if (known.knows(password)) return "among the passwords that are tried first, or named after the club";
  return {};
}

}  // namespace lanework::serve
