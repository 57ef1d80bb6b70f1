#include "core/base/two_languages.h"

namespace lanework {

const char* language_tag(Language language) { return language == Language::kSpanish ? "es" : "en"; }

std::optional<Language> language_with_tag(std::string_view tag) {
  for (const Language language : kEveryLanguage)
    if (tag == language_tag(language)) return language;
  return {};
}

namespace two_languages {

std::string filled(std::string_view text, const std::vector<std::string>& values) {
  constexpr std::string_view kPlace = "{}";
  std::string out;
  std::size_t from = 0;
  for (const std::string& value : values) {
    const std::size_t place = text.find(kPlace, from);
    out += text.substr(from, place - from);
    out += value;
    from = place + kPlace.size();
  }
  out += text.substr(from);
  return out;
}

}  // namespace two_languages

std::string Speaker::list(const std::vector<std::string>& names) const {
  static constexpr Words kAnd{" and ", " y "};
  // 'y' is 'e' before the sound of an i, which 'hie' has not.
  const auto joint = [&](const std::string& next) {
    const bool e = language_ == Language::kSpanish &&
                   (next.starts_with('i') || (next.starts_with("hi") && !next.starts_with("hie")));
    return e ? std::string(" e ") : say(kAnd);
  };
  std::string out;
  for (std::size_t i = 0; i < names.size(); ++i)
    out += (i == 0 ? "" : i + 1 == names.size() ? joint(names[i]) : ", ") + names[i];
  return out;
}

}  // namespace lanework
