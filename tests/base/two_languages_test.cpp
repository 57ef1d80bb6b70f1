#include "core/base/two_languages.h"

#include <gtest/gtest.h>

#include "core/base/date_words.h"

namespace lanework {
namespace {

TEST(TwoLanguages, Tags) {
  for (const Language language : kEveryLanguage) EXPECT_EQ(language_with_tag(language_tag(language)), language);
  EXPECT_FALSE(language_with_tag("fr"));
  EXPECT_FALSE(language_with_tag(""));
}

TEST(TwoLanguages, PlacesAreFilledInTheirOrder) {
  const auto said = [](Language language) {
    return Speaker(language).say({"{} of {} squads", "{} de {} equipos"}, 3, std::string("{}"));
  };
  EXPECT_EQ(said(Language::kEnglish), "3 of {} squads");
  EXPECT_EQ(said(Language::kSpanish), "3 de {} equipos");
}

TEST(TwoLanguages, Lists) {
  EXPECT_EQ(Speaker(Language::kEnglish).list({"a", "b", "c"}), "a, b and c");
  EXPECT_EQ(Speaker(Language::kSpanish).list({"a", "b", "c"}), "a, b y c");
  EXPECT_EQ(Speaker(Language::kSpanish).list({"edad", "hielo"}), "edad y hielo");
  EXPECT_EQ(Speaker(Language::kSpanish).list({"edad", "hijos"}), "edad e hijos");
  EXPECT_EQ(Speaker(Language::kSpanish).list({"a"}), "a");
  EXPECT_EQ(Speaker(Language::kSpanish).list({}), "");
}

TEST(TwoLanguages, Days) {
  EXPECT_EQ(to_words(*make_date(2026, 11, 26), Language::kSpanish), "jueves 26 de noviembre de 2026");
  EXPECT_EQ(to_words(*make_date(2026, 1, 3), Language::kSpanish), "sábado 3 de enero de 2026");
}

}  // namespace
}  // namespace lanework
