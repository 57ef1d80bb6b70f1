// Whatever the texts: two sides at most, nothing outside the page, nothing on top of something else.
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

constexpr double kWhiteEdge = 15;  // points a home printer cannot print

std::string random_text(int most) {
  const std::vector<std::string> words = {"knee",
                                          "down",
                                          "a",
                                          "hips",
                                          "over the toes",
                                          "Donaudampfschiff",
                                          "\u00E9t\u00E9",
                                          "\u4F50\u85E4\u7F8E\u54B2",
                                          "\u0646\u0648\u0631",
                                          "x",
                                          "2 \u00D7 20 s",
                                          "<b>"};
  std::string text;
  const int count = *rc::gen::inRange(0, most + 1);
  for (int word = 0; word < count; ++word) text += (word > 0 ? " " : "") + *rc::gen::elementOf(words);
  return text;
}

std::vector<std::string> random_texts(int most_entries, int most_words) {
  std::vector<std::string> texts(static_cast<std::size_t>(*rc::gen::inRange(0, most_entries + 1)));
  for (std::string& text : texts) text = random_text(most_words);
  return texts;
}

CardMatter random_card(int least_drills, int most_drills) {
  CardMatter card = sample_card(1);
  card.squad = random_text(12);
  card.club = random_text(12);
  card.strip.name = random_text(12);
  card.strip.lanes = *rc::gen::inRange(1, 13);
  card.strip.lane_length_mm = *rc::gen::inRange(5000, 60001);
  card.strip.cone_spacing_mm = *rc::gen::inRange(1000, card.strip.lane_length_mm + 1);
  card.strip.area_length_mm = *rc::gen::inRange(0, 60000);
  card.changes = random_texts(6, 20);
  card.not_covered = random_texts(4, 20);
  card.stop_always = random_texts(8, 20);
  card.stop_drill = random_texts(40, 14);
  card.danger_signs.clear();
  for (int signs = *rc::gen::inRange(0, 4); signs > 0; --signs) {
    card.danger_signs.push_back({random_text(4), random_text(30)});
  }
  ActionPlanMatter& plan = card.action_plan;
  for (std::string* text :
       {&plan.note, &plan.lacks, &plan.emergency_number, &plan.address, &plan.way_in, &plan.phone, &plan.defibrillator,
        &plan.first_aid_bag, &plan.stays_with_player, &plan.calls, &plan.meets_ambulance, &plan.minds_others}) {
    *text = random_text(15);
  }
  card.drills.clear();
  int now = 20;
  const int drills = *rc::gen::inRange(least_drills, most_drills + 1);
  for (int at = 0; at < drills; ++at) {
    DrillMatter drill = sample_card(14).drills[static_cast<std::size_t>(at % 14)];
    drill.name = random_text(10);
    drill.rung_words = random_text(8);
    drill.dose_words = random_text(6);
    drill.phase = random_text(3);
    drill.cues = random_texts(4, 10);
    drill.watch.assign(static_cast<std::size_t>(*rc::gen::inRange(0, 5)), {random_text(6), random_text(6)});
    drill.needs = random_texts(3, 4);
    drill.mark = {random_text(3), random_text(10)};
    drill.change_seconds = *rc::gen::inRange(0, 40);
    drill.starts_second = now + drill.change_seconds;
    drill.takes_seconds = *rc::gen::inRange(1, 200);
    drill.telling_seconds = *rc::gen::inRange(0, drill.takes_seconds + 1);
    now = drill.starts_second + drill.takes_seconds;
    card.drills.push_back(drill);
  }
  card.planned_seconds = now;
  card.nine_in_ten_seconds = now + *rc::gen::inRange(0, 300);
  card.slot_seconds = std::max(60, now + *rc::gen::inRange(-100, 400));
  return card;
}

// The room a text really takes, without the white above and below its letters.
Box ink_of(const Text& text, const TextMeasure& measure) {
  const Extent extent = measure.extent(text.lead, text.text, text.style, text.box.width, text.max_lines);
  const double slack = text.box.width - extent.width;
  const double shift = text.align == Align::kRight ? slack : text.align == Align::kCentre ? slack / 2 : 0;
  const double white = typeface(text.style).size * 0.2;
  return {text.box.x + shift, text.box.y + white, extent.width, extent.height - 2 * white};
}

void judge(const std::vector<Page>& pages, const Sheet& sheet, const TextMeasure& measure) {
  const Box printable{kWhiteEdge, kWhiteEdge, sheet.width - 2 * kWhiteEdge, sheet.height - 2 * kWhiteEdge};
  RC_ASSERT(pages.size() <= 2u);
  for (const Page& page : pages) {
    for (std::size_t one = 0; one < page.regions.size(); ++one) {
      RC_ASSERT(inside(page.regions[one].box, content_of(sheet)));
      for (std::size_t other = one + 1; other < page.regions.size(); ++other) {
        const std::set<std::string> names{page.regions[one].name, page.regions[other].name};
        if (names == std::set<std::string>{"code", "stop"}) continue;  // the code stands in the foot
        if (overlap(page.regions[one].box, page.regions[other].box)) {
          RC_FAIL(page.regions[one].name + " lies on " + page.regions[other].name);
        }
      }
    }
    std::vector<std::pair<Box, std::string>> inks;
    for (const Mark& mark : page.marks) {
      const Text* text = std::get_if<Text>(&mark);
      if (text != nullptr) inks.emplace_back(ink_of(*text, measure), text->lead + "|" + text->text);
    }
    for (std::size_t one = 0; one < inks.size(); ++one) {
      if (!inside(inks[one].first, printable)) RC_FAIL("'" + inks[one].second + "' leaves the page");
      for (std::size_t other = one + 1; other < inks.size(); ++other) {
        if (overlap(inks[one].first, inks[other].first)) {
          RC_FAIL("'" + inks[one].second + "' lies on '" + inks[other].second + "'");
        }
      }
    }
  }
}

std::set<std::string> drills_on(const std::vector<Page>& pages) {
  std::set<std::string> drills;
  for (const Page& page : pages) {
    for (const Region& region : page.regions) {
      if (region.name.rfind("drill ", 0) == 0) drills.insert(region.name);
    }
  }
  return drills;
}

void check_cards(int least_drills, int most_drills, const TextMeasure& measure) {
  const CardMatter card = random_card(least_drills, most_drills);
  const Sheet sheet = sheet_of(*rc::gen::element(Paper::kA4, Paper::kUsLetter));
  const Result<std::vector<Page>> pages = lay_out_card(card, sheet, measure);
  if (!pages) RC_FAIL(to_line(pages.faults().front()));
  RC_ASSERT(drills_on(pages.value()).size() == card.drills.size());
  judge(pages.value(), sheet, measure);
}

TEST(Layout, HoldsWhateverTheTexts) {
  const FixedMeasure measure;
  EXPECT_TRUE(rc::check("5 to 14 drills fit", [&] { check_cards(5, 14, measure); }));
}

TEST(Layout, HoldsUpToTwentyDrills) {
  const FixedMeasure measure;
  EXPECT_TRUE(rc::check("1 to 20 drills fit", [&] { check_cards(1, 20, measure); }));
}

TEST(Layout, HoldsWithRealFonts) {
  const PangoMeasure measure;
  EXPECT_TRUE(rc::check("5 to 14 drills fit", [&] { check_cards(5, 14, measure); }));
}

TEST(Layout, LosesNothingOfAnOrdinaryEvening) {
  const PangoMeasure measure;
  const CardMatter card = sample_card(14);
  const auto pages = lay_out_card(card, sheet_of(Paper::kA4), measure);
  ASSERT_TRUE(pages.ok());
  std::multiset<std::string> texts;
  for (const Page& page : pages.value()) {
    for (const Mark& mark : page.marks) {
      const Text* text = std::get_if<Text>(&mark);
      if (text == nullptr) continue;
      texts.insert(text->text);
      texts.insert(text->lead);
    }
  }
  for (const SaidTo& said : card.danger_signs) EXPECT_TRUE(texts.count(said.signs)) << said.signs;
  EXPECT_TRUE(texts.count(card.action_plan.lacks));
  for (const DrillMatter& drill : card.drills) {
    EXPECT_TRUE(texts.count(drill.name)) << drill.name;
    // On a full card it leads the words of the rung.
    EXPECT_TRUE(texts.count(drill.dose_words) + texts.count(drill.dose_words + ",") > 0) << drill.dose_words;
    for (const std::string& cue : drill.cues) EXPECT_TRUE(texts.count(cue)) << cue;
  }
  for (const std::string& line : card.stop_always) EXPECT_TRUE(texts.count(line)) << line;
  EXPECT_TRUE(texts.count("pain in the shin or heel"));
  EXPECT_TRUE(texts.count("pinching at the front of the hip"));
}

TEST(Layout, GivesTheSameMarksTwice) {
  const FixedMeasure measure;
  const auto one = lay_out_card(sample_card(9), sheet_of(Paper::kA4), measure);
  const auto other = lay_out_card(sample_card(9), sheet_of(Paper::kA4), measure);
  ASSERT_TRUE(one.ok() && other.ok());
  for (std::size_t page = 0; page < one.value().size(); ++page) {
    const auto& regions = one.value()[page].regions;
    ASSERT_EQ(regions.size(), other.value()[page].regions.size());
    for (std::size_t at = 0; at < regions.size(); ++at) {
      EXPECT_EQ(regions[at].box.y, other.value()[page].regions[at].box.y) << regions[at].name;
    }
  }
}

TEST(Layout, RefusesWhatCannotBeDrawn) {
  const FixedMeasure measure;
  const auto faults = [&](CardMatter card) {
    const auto pages = lay_out_card(card, sheet_of(Paper::kA4), measure);
    return pages.ok() ? std::string() : pages.faults().front().place.field;
  };
  CardMatter none = sample_card(1);
  none.drills.clear();
  EXPECT_EQ(faults(none), "drills");
  CardMatter flat = sample_card(3);
  flat.strip.lane_length_mm = 0;
  EXPECT_EQ(faults(flat), "strip.lane_length_mm");
  CardMatter late = sample_card(3);
  late.drills[2].takes_seconds = 100000;
  EXPECT_EQ(faults(late), "drills.3.takes_seconds");
}

TEST(Slip, FlowsToAsManyPagesAsItNeeds) {
  const FixedMeasure measure;
  const Sheet sheet = sheet_of(Paper::kA4);
  SlipMatter slip = sample_slip();
  slip.partners.resize(30,
                       {{"A very long name that fills the column to its very end and then some more", "B"}, "note"});
  const auto pages = lay_out_slip(slip, sheet, measure);
  ASSERT_TRUE(pages.ok());
  EXPECT_GE(pages.value().size(), 2u);
  int groups = 0;
  for (const Page& page : pages.value()) {
    for (const Region& region : page.regions) {
      EXPECT_TRUE(inside(region.box, content_of(sheet))) << region.name;
      groups += region.name.rfind("partners ", 0) == 0 ? 1 : 0;
    }
  }
  EXPECT_EQ(groups, 30);
}

}  // namespace
}  // namespace lanework::draw
