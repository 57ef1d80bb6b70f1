// Where a long routine gives way: white, then the second and third thing to watch for, then the figures, then
// the size of the text; only then are texts cut or left out, and what to watch for before any cue.
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <set>

#include "app/draw/card_layout.h"
#include "app/draw/pango_text.h"
#include "tests/draw/fixed_measure.h"
#include "tests/draw/sample_card.h"

namespace lanework::draw {
namespace {

std::string sentence(int most_characters) {
  static const std::vector<std::string> words = {"knee", "over",  "the",  "second", "toe",
                                                 "hips", "level", "soft", "land"};
  const int characters = *rc::gen::inRange(most_characters / 3, most_characters + 1);
  std::string text = *rc::gen::elementOf(words);
  while (static_cast<int>(text.size()) < characters - 8) text += " " + *rc::gen::elementOf(words);
  return text;
}

// Texts as long as the catalogue's may be, all different, so that each can be found again.
CardMatter long_card(int drills) {
  CardMatter card = sample_card(14);
  const std::vector<DrillMatter> models = card.drills;
  card.drills.clear();
  int now = 20;
  for (int at = 0; at < drills; ++at) {
    const std::string number = std::to_string(at) + " ";
    DrillMatter drill = models[static_cast<std::size_t>(at) % models.size()];
    drill.name = number + sentence(30);
    drill.rung_words = number + sentence(40);
    drill.cues = {number + "a " + sentence(32), number + "b " + sentence(32), number + "c " + sentence(32)};
    drill.watch = {{number + "d " + sentence(30), sentence(30)}, {number + "e " + sentence(30), sentence(30)}};
    drill.change_seconds = 0;
    drill.starts_second = now;
    now += drill.takes_seconds;
    card.drills.push_back(drill);
  }
  card.planned_seconds = card.nine_in_ten_seconds = now;
  card.slot_seconds = now + 60;
  return card;
}

struct Told {
  std::set<std::string> whole;  // texts of the side that stand uncut
  std::vector<Picture> figures;
};

Told told_on(const Page& side, const TextMeasure& measure) {
  Told told;
  for (const Mark& mark : side.marks) {
    if (const Picture* picture = std::get_if<Picture>(&mark)) told.figures.push_back(*picture);
    const Text* text = std::get_if<Text>(&mark);
    if (text == nullptr) continue;
    const bool cut = measure.extent(text->lead, text->text, text->style, text->box.width, text->max_lines).cut;
    if (!cut) told.whole.insert(text->text);
  }
  return told;
}

bool stands_on(const Page& side, std::size_t drill) {
  return std::any_of(side.regions.begin(), side.regions.end(),
                     [&](const Region& region) { return region.name == "drill " + std::to_string(drill); });
}

void judge_drill(const DrillMatter& drill, const Told& told) {
  const auto whole = [&](const std::string& text) { return told.whole.count(text) > 0; };
  const auto watch = [&](std::size_t at) {
    return whole(drill.watch[at].fault + ": \u201C" + drill.watch[at].cue + "\u201D");
  };
  const double largest =
      std::max_element(told.figures.begin(), told.figures.end(), [](const auto& one, const auto& other) {
        return one.box.height < other.box.height;
      })->box.height;
  const bool cues = std::all_of(drill.cues.begin(), drill.cues.end(), whole);
  constexpr double kSmallFigure = 54;
  constexpr double kRoomyFigure = 80;
  RC_ASSERT(watch(0) || largest <= kSmallFigure);
  RC_ASSERT(watch(1) || largest < kRoomyFigure);
  RC_ASSERT(whole(drill.rung_words) || largest <= kSmallFigure);
  RC_ASSERT(whole(drill.name) || largest <= kSmallFigure);
  RC_ASSERT(cues || largest <= kSmallFigure);
}

void check_long_card(const TextMeasure& measure) {
  const int drills = *rc::gen::inRange(1, 21);
  const CardMatter card = long_card(drills);
  const Sheet sheet = sheet_of(*rc::gen::element(Paper::kA4, Paper::kUsLetter));
  const Result<std::vector<Page>> pages = lay_out_card(card, sheet, measure);
  RC_ASSERT(pages.ok());
  for (const Page& side : pages.value()) {
    const Told told = told_on(side, measure);
    for (std::size_t drill = 0; drill < card.drills.size(); ++drill) {
      if (stands_on(side, drill)) judge_drill(card.drills[drill], told);
    }
  }
}

TEST(GivingWay, LeavesTextsForLast) {
  const PangoMeasure measure;
  EXPECT_TRUE(rc::check("figures shrink before a text is cut", [&] { check_long_card(measure); }));
}

TEST(GivingWay, CutsNothingOfTwelveDrills) {
  const PangoMeasure measure;
  EXPECT_TRUE(rc::check("12 drills of long texts", [&] {
    const CardMatter card = long_card(12);
    const auto pages = lay_out_card(card, sheet_of(*rc::gen::element(Paper::kA4, Paper::kUsLetter)), measure);
    RC_ASSERT(pages.ok());
    for (const Page& side : pages.value()) {
      for (const std::string& text : cut_texts(side, measure)) RC_FAIL("cut: " + text);
    }
  }));
}

// Up to the fullest card that there can be: stop lines and doses outlast everything else.
TEST(GivingWay, KeepsStopLinesAndDoses) {
  const PangoMeasure measure;
  EXPECT_TRUE(rc::check("20 drills", [&] {
    const CardMatter card = long_card(20);
    const auto pages = lay_out_card(card, sheet_of(Paper::kUsLetter), measure);
    RC_ASSERT(pages.ok());
    std::string all;
    for (const Page& side : pages.value()) {
      for (const std::string& text : told_on(side, measure).whole) all += text + "\n";
      for (const Mark& mark : side.marks) {
        if (const Text* text = std::get_if<Text>(&mark)) all += text->lead + "\n";
      }
    }
    for (const DrillMatter& drill : card.drills) RC_ASSERT(all.find(drill.dose_words) != std::string::npos);
    RC_ASSERT(all.find("pain in the shin or heel") != std::string::npos);
    RC_ASSERT(all.find("pinching at the front of the hip") != std::string::npos);
  }));
}

}  // namespace
}  // namespace lanework::draw
