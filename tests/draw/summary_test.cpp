// The summary of a club's block: nothing cut, nothing off the page, however many squads there are.
#include <gtest/gtest.h>

#include "app/draw/card_layout.h"
#include "app/draw/pango_text.h"
#include "app/draw/summary.h"

namespace lanework::draw {
namespace {

SummaryMatter matter_of(int squads) {
  SummaryMatter matter;
  matter.club = "Quillmere Juniors";
  matter.facts = std::to_string(squads) + " squads, 6 weeks from Monday 23 November 2026.";
  matter.date_iso = "2026-11-23";
  matter.overall = {"707 of 1080 weekly targets met.", "Short in most squads and most weeks: pulse raising, mobility."};
  for (int i = 0; i < squads; ++i) {
    matter.rows.push_back({"Under-13 Kestrels " + std::to_string(i), "34 of 45 met",
                           i % 3 == 0 ? "" : "trunk 30 s, balance 40 s", "Step and hold; Bounding for Squat; High skip",
                           "0.6 %"});
  }
  return matter;
}

void expect_whole(const Pages& pages, const Sheet& sheet, int squads) {
  const PangoMeasure measure;
  const Box content = content_of(sheet);
  int rows = 0;
  for (const Page& side : pages.sides) {
    for (const std::string& text : cut_texts(side, measure)) ADD_FAILURE() << "cuts '" << text << "'";
    for (const Region& region : side.regions) {
      rows += region.name.starts_with("squad") ? 1 : 0;
      EXPECT_TRUE(inside(region.box, content)) << region.name;
    }
  }
  EXPECT_EQ(rows, squads);
}

TEST(Summary, FitsAClubOnOnePageAndABigOneOnSeveral) {
  for (const Paper paper : {Paper::kA4, Paper::kUsLetter}) {
    for (const int squads : {1, 22, 60, 200}) {
      const auto pages = draw_summary(matter_of(squads), paper);
      ASSERT_TRUE(pages);
      EXPECT_TRUE(squads > 22 || pages.value().sides.size() == 1U);
      expect_whole(pages.value(), sheet_of(paper), squads);
    }
  }
}

int small_words(const Page& page) {
  int small = 0;
  for (const Mark& mark : page.marks) {
    const Text* text = std::get_if<Text>(&mark);
    small += text != nullptr && text->style == TextStyle::kSmall ? 1 : 0;
  }
  return small;
}

// Between what one page holds in the usual type and what it holds in small type, small type rather than a second page;
// beyond that the usual type again.
TEST(Summary, SetsLongRowsSmallerRatherThanOnTwoPages) {
  for (const Paper paper : {Paper::kA4, Paper::kUsLetter}) {
    int in_small = 0;
    for (int squads = 15; squads <= 45; ++squads) {
      SummaryMatter matter = matter_of(squads);
      for (SummaryRow& row : matter.rows) {
        row.short_of = "hip and groin 80 s, trunk 60 s, leg strength and alignment 30 s";
        row.changes = "Side-lying inner-thigh lift; Heel-to-toe stance for Partner nudges on one leg; Bounding";
      }
      const auto pages = draw_summary(matter, paper);
      ASSERT_TRUE(pages);
      const bool small = small_words(pages.value().sides.front()) > 0;
      in_small += small ? 1 : 0;
      EXPECT_TRUE(!small || pages.value().sides.size() == 1U) << squads;
      expect_whole(pages.value(), sheet_of(paper), squads);
    }
    EXPECT_GT(in_small, 1);
  }
}

TEST(Summary, WithoutSquadsThereIsNone) { EXPECT_FALSE(draw_summary(matter_of(0), Paper::kA4)); }

}  // namespace
}  // namespace lanework::draw
