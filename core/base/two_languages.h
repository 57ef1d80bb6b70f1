// What people read, in the languages that are spoken here, side by side where it is said. Neither text can be left out,
// and both have the same places and the same digits in the same order: else it does not compile. So a sentence can
// claim no more in one language than in the other: which one is said is decided once, before the language.
//
//   const Speaker speaker(language);
//   speaker.say({"No injury in {} hours.", "Ninguna lesión en {} horas."}, "120");
#pragma once

#include <array>
#include <concepts>
#include <cstddef>
#include <cstdint>
#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace lanework {

enum class Language : std::uint8_t { kEnglish, kSpanish };
inline constexpr std::array<Language, 2> kEveryLanguage = {Language::kEnglish, Language::kSpanish};

const char* language_tag(Language language);  // 'en', 'es' (BCP 47)
std::optional<Language> language_with_tag(std::string_view tag);

namespace two_languages {

// Not to be compiled: what a mistake in a pair of texts is called by the compiler.
void one_language_is_missing();
void places_are_not_as_many_as_values();
void digits_or_places_differ();

// The next digit or place from 'at' on: a digit itself, '{' for a place, 0 at the end.
constexpr char next_mark(std::string_view text, std::size_t& at) {
  while (at < text.size()) {
    const char c = text[at++];
    if (c == '{' || (c >= '0' && c <= '9')) return c;
  }
  return 0;
}

consteval void check(std::string_view english, std::string_view spanish, std::size_t places) {
  if (english.empty() != spanish.empty()) one_language_is_missing();
  std::size_t in_english = 0;
  std::size_t in_spanish = 0;
  std::size_t found = 0;
  for (;;) {
    const char mark = next_mark(english, in_english);
    if (mark != next_mark(spanish, in_spanish)) digits_or_places_differ();
    if (mark == 0) break;
    found += mark == '{' ? 1 : 0;
  }
  if (found != places) places_are_not_as_many_as_values();
}

std::string filled(std::string_view text, const std::vector<std::string>& values);

inline std::string written(std::string value) { return value; }
template <std::integral Whole>
std::string written(Whole value) {
  return std::to_string(value);
}

}  // namespace two_languages

// Of so many places, each written '{}'. The text lives as long as the program.
template <std::size_t kPlaces>
class Sentence {
 public:
  // Not explicit: a pair of texts stands where it is said.
  consteval Sentence(const char* english, const char* spanish) : texts_{english, spanish} {
    two_languages::check(texts_[0], texts_[1], kPlaces);
  }
  [[nodiscard]] constexpr std::string_view in(Language language) const {
    return texts_[static_cast<std::size_t>(language)];
  }

 private:
  std::array<std::string_view, kEveryLanguage.size()> texts_;
};

// A heading, a label: a text without places.
using Words = Sentence<0>;

// Says things in one language.
class Speaker {
 public:
  explicit Speaker(Language language) : language_(language) {}
  [[nodiscard]] Language language() const { return language_; }

  template <class... Values>
  [[nodiscard]] std::string say(const Sentence<sizeof...(Values)>& sentence, const Values&... values) const {
    return two_languages::filled(sentence.in(language_), {two_languages::written(values)...});
  }
  // 'a, b and c'.
  [[nodiscard]] std::string list(const std::vector<std::string>& names) const;

 private:
  Language language_;
};

}  // namespace lanework
