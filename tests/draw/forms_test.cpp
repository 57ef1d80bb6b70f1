// Report, letter and emergency sheet: nothing cut, nothing off the page, whatever stands on them; the cover names
// nobody.
#include <gtest/gtest.h>

#include "app/draw/card_layout.h"
#include "app/draw/emergency_sheet.h"
#include "app/draw/form_words.h"
#include "app/draw/incident.h"
#include "app/draw/pango_text.h"
#include "app/draw/referral.h"

namespace lanework::draw {
namespace {

IncidentMatter known() {
  IncidentMatter matter;
  matter.club = "Quillmere Juniors";
  matter.squad = "Under-13 Kestrels";
  matter.player = "Ines Marlow";
  matter.date_words = "Tuesday 24 November 2026";
  matter.date_iso = "2026-11-24";
  matter.time = "18:12";
  matter.venue = "Millrace ground, Millrace Lane 9, Quillmere";
  matter.what_happened = "Slipped on wet grass at the last cone and fell on the left hand.";
  matter.signs = {"holds the wrist still", "swelling, more after ten minutes"};
  matter.done = {"out of the drill", "ice in a towel"};
  matter.told = {"the mother, by the coach, 18:25"};
  return matter;
}

// As an incident of who is on the way back, with a knee besides.
IncidentMatter known_before() {
  IncidentMatter matter = known();
  matter.known_before = KnownBeforeMatter{
      "As known Monday 23 November 2026 20:10, the day before.",
      {"head, a fit of dizziness; told Monday 16 November 2026 19:40, 8 days before"},
      {},
      {"no jumping until 3 Dec; set for knee against impact, Friday 20 November 2026 19:00, 4 days before"}};
  return matter;
}

IncidentMatter longest() {
  IncidentMatter matter = known();
  matter.what_happened.clear();
  while (matter.what_happened.size() < 1500) matter.what_happened += "wide words and small ";
  matter.what_happened.pop_back();
  matter.signs.assign(12, std::string(matter.what_happened, 0, 200));
  matter.done = matter.told = matter.signs;
  return matter;
}

std::string all_text(const Page& page) {
  std::string out;
  for (const Mark& mark : page.marks) {
    if (const Text* text = std::get_if<Text>(&mark)) out += text->lead + " " + text->text + "\n";
  }
  return out;
}

std::string all_text(const Pages& pages) {
  std::string out;
  for (const Page& side : pages.sides) out += all_text(side);
  return out;
}

void expect_whole(const Pages& pages, Paper paper) {
  const PangoMeasure measure;
  const Box content = content_of(sheet_of(paper));
  for (const Page& side : pages.sides) {
    for (const std::string& text : cut_texts(side, measure)) ADD_FAILURE() << "cuts '" << text << "'";
    for (std::size_t i = 0; i < side.regions.size(); ++i) {
      EXPECT_TRUE(inside(side.regions[i].box, content)) << side.regions[i].name;
      for (std::size_t j = i + 1; j < side.regions.size(); ++j) {
        const bool row = side.regions[i].name.substr(0, 4) == side.regions[j].name.substr(0, 4);
        EXPECT_TRUE(row || !overlap(side.regions[i].box, side.regions[j].box))
            << side.regions[i].name << " lies on " << side.regions[j].name;
      }
    }
  }
}

class Forms : public testing::TestWithParam<Paper> {};

TEST_P(Forms, AreWholeWhateverIsKnown) {
  for (const auto draw : {draw_incident, draw_referral}) {
    for (const IncidentMatter& matter : {IncidentMatter{}, known(), longest()}) {
      const auto pages = draw(matter, GetParam());
      ASSERT_TRUE(pages);
      expect_whole(pages.value(), GetParam());
      const std::string text = all_text(pages.value());
      EXPECT_NE(text.find(words::kForFamilyAndClinician), std::string::npos);
      EXPECT_NE(text.find("Local rules and licensed practice come first."), std::string::npos);
      EXPECT_NE(text.find(matter.what_happened), std::string::npos);
    }
    EXPECT_EQ(draw(known(), GetParam()).value().sides.size(), 1U);
    EXPECT_EQ(draw({}, GetParam()).value().sides.size(), 1U);
    EXPECT_GT(draw(longest(), GetParam()).value().sides.size(), 1U);
  }
}

TEST_P(Forms, HaveAPlaceForWhatWasKnownBeforeOnlyWhereSomebodyAsked) {
  for (const auto draw : {draw_incident, draw_referral}) {
    const auto pages = draw(known_before(), GetParam());
    ASSERT_TRUE(pages);
    expect_whole(pages.value(), GetParam());
    EXPECT_LE(pages.value().sides.size(), 2U);
    const std::string text = all_text(pages.value());
    for (const char* words : {words::kKnownBefore, words::kForClinicianOnly, "the day before.",
                              "no jumping until 3 Dec", "a fit of dizziness", words::kNothingEntered}) {
      EXPECT_NE(text.find(words), std::string::npos) << words;
    }
    const std::string without = all_text(draw(known(), GetParam()).value());
    for (const char* words : {words::kKnownBefore, words::kForClinicianOnly, words::kNothingEntered}) {
      EXPECT_EQ(without.find(words), std::string::npos) << words;
    }
  }
}

// What goes back to the club does not lie beside what only the clinician is told.
TEST_P(Forms, TheAnswerIsAPageOfItsOwnWhereMoreIsTold) {
  const auto pages = draw_referral(known_before(), GetParam());
  ASSERT_TRUE(pages);
  ASSERT_EQ(pages.value().sides.size(), 2U);
  const std::string told = all_text(pages.value().sides.front());
  const std::string answer = all_text(pages.value().sides.back());
  EXPECT_NE(told.find("no jumping until 3 Dec"), std::string::npos);
  EXPECT_EQ(told.find(words::kClinicianAnswers), std::string::npos);
  for (const char* words : {words::kClinicianAnswers, "Ines Marlow", "Tuesday 24 November 2026", "Signature"}) {
    EXPECT_NE(answer.find(words), std::string::npos) << words;
  }
  for (const char* words : {words::kKnownBefore, "jumping until", "dizziness"}) {
    EXPECT_EQ(answer.find(words), std::string::npos) << words;
  }
  for (const std::string& page : {told, answer}) EXPECT_NE(page.find(words::kFormRules), std::string::npos);
}

TEST_P(Forms, TheSignatureStandsWithWhatItSigns) {
  IncidentMatter matter = known_before();
  for (int more = 0; more < 40; ++more) {
    const auto pages = draw_incident(matter, GetParam());
    ASSERT_TRUE(pages);
    for (const Page& side : pages.value().sides) {
      const std::string text = all_text(side);
      const bool reported = text.find("Reported by") != std::string::npos;
      EXPECT_EQ(reported, text.find("Signature") != std::string::npos) << more << " lines more";
    }
    matter.known_before->held.emplace_back("no jumping");
  }
}

TEST_P(Forms, EveryPageSaysWhoMayHaveIt) {
  const auto pages = draw_incident(longest(), GetParam());
  for (const Page& side : pages.value().sides) {
    EXPECT_NE(all_text(side).find(words::kForFamilyAndClinician), std::string::npos);
  }
}

EmergencySheetMatter sheet_of_players(int players) {
  EmergencySheetMatter matter;
  matter.club = "Quillmere Juniors";
  matter.squad = "Under-13 Kestrels";
  matter.printed = "Thursday 26 November 2026";
  matter.printed_iso = "2026-11-26";
  matter.expires = "Wednesday 24 February 2027";
  matter.without_consent = 3;
  for (int i = 0; i < players; ++i) {
    matter.rows.push_back(
        {"Ines Marlow", "Tova Marlow", "+44 7700 900101", "hazelnut", std::string(120, i % 2 == 0 ? 'i' : 'w'), ""});
  }
  return matter;
}

TEST_P(Forms, TheSealedSheetIsWholeAndItsCoverNamesNobody) {
  for (const int players : {1, 18, 60, 200}) {
    const auto pages = draw_emergency_sheet(sheet_of_players(players), GetParam());
    ASSERT_TRUE(pages);
    expect_whole(pages.value(), GetParam());
    int rows = 0;
    for (const Page& side : pages.value().sides) {
      for (const Region& region : side.regions) rows += region.name.starts_with("player") ? 1 : 0;
      EXPECT_NE(all_text(side).find(words::kOpenOnly), std::string::npos);
      EXPECT_NE(all_text(side).find("Expires Wednesday 24 February 2027"), std::string::npos);
    }
    EXPECT_EQ(rows, players);
    const std::string cover = all_text(pages.value().sides.front());
    for (const char* secret : {"Marlow", "7700", "hazelnut"}) EXPECT_EQ(cover.find(secret), std::string::npos);
    EXPECT_EQ(pages.value().title.find("Marlow"), std::string::npos);
  }
  EXPECT_FALSE(draw_emergency_sheet(sheet_of_players(0), GetParam()));
  EXPECT_FALSE(draw_emergency_sheet(sheet_of_players(201), GetParam()));
}

// Said by the family, or not: nothing is concluded from silence.
TEST(EmergencySheet, SilenceIsNotNone) {
  const auto pages = draw_emergency_sheet(sheet_of_players(1), Paper::kA4);
  EXPECT_NE(all_text(pages.value().sides[1]).find("Other: not stated"), std::string::npos);
}

INSTANTIATE_TEST_SUITE_P(Both, Forms, testing::Values(Paper::kA4, Paper::kUsLetter));

}  // namespace
}  // namespace lanework::draw
