// The demo squads' cards and slips, with the fonts they are printed in: nothing that a coach must read is cut.
#include <gtest/gtest.h>

#include <cmath>
#include <optional>
#include <set>
#include <tuple>

#include "app/cli/card_matter.h"
#include "app/cli/venue_matter.h"
#include "app/draw/card.h"
#include "app/draw/pango_text.h"
#include "app/read/evening_files.h"
#include "core/door/slip_answer.h"
#include "core/figure/skeleton.h"
#include "core/figure/standing.h"

namespace lanework::draw {
namespace {

constexpr const char* kRoot = LANEWORK_SOURCE_DIR;

// The figures that the matter points to live as long as the evening.
struct Evening {
  door::EveningMatter evening;
  door::PlanAnswer answer;
};

std::optional<Evening> evening_of(const std::string& squad) {
  const std::string root = kRoot;
  auto files = read::read_evening_files(root + "/demo/quillmere/squads/" + squad + ".toml", root + "/catalogue");
  if (!files) return std::nullopt;
  read::EveningFiles& read = files.value();
  auto evening = door::read_evening({std::move(read.catalogue), std::move(read.routine), std::move(read.strip),
                                     std::move(read.squad), std::move(read.restrictions), std::move(read.roster)});
  if (!evening) return std::nullopt;
  plan::KernelWorkspace workspace;
  door::PlanAnswer answer = door::answer_plan(evening.value(), workspace);
  return Evening{std::move(evening).value(), std::move(answer)};
}

std::multiset<std::string> texts_of(const Pages& pages) {
  std::multiset<std::string> texts;
  for (const Page& side : pages.sides) {
    for (const Mark& mark : side.marks) {
      if (const Text* text = std::get_if<Text>(&mark)) texts.insert(text->text);
    }
  }
  return texts;
}

void expect_uncut(const Pages& pages, const std::string& what) {
  const PangoMeasure measure;
  for (const Page& side : pages.sides) {
    for (const std::string& text : cut_texts(side, measure)) ADD_FAILURE() << what << " cuts '" << text << "'";
  }
}

class DemoCards : public testing::TestWithParam<std::tuple<const char*, Paper>> {};

TEST_P(DemoCards, CutNothing) {
  const auto& [squad, paper] = GetParam();
  const std::optional<Evening> evening = evening_of(squad);
  ASSERT_TRUE(evening.has_value());
  const CardMatter matter = cli::card_matter(evening->answer, evening->evening);
  const Result<Pages> card = draw_card(matter, paper);
  ASSERT_TRUE(card.ok());
  expect_uncut(card.value(), "the card");
  CardMatter over = matter;
  over.slot_seconds = over.nine_in_ten_seconds - 119;
  const Result<Pages> late = draw_card(over, paper);
  ASSERT_TRUE(late.ok());
  expect_uncut(late.value(), "the card of an evening that may run over");
  const std::multiset<std::string> texts = texts_of(card.value());
  for (const DrillMatter& drill : matter.drills) {
    for (const std::string& cue : drill.cues) EXPECT_TRUE(texts.count(cue)) << drill.name << ": " << cue;
    ASSERT_FALSE(drill.watch.empty());
    const WatchForMatter& watch = drill.watch.front();
    EXPECT_TRUE(texts.count(watch.fault + ": \u201C" + watch.cue + "\u201D")) << drill.name << ": " << watch.fault;
  }
  const Result<door::Slip> answer = door::answer_slip(evening->evening, evening->answer);
  ASSERT_TRUE(answer.ok());
  const Result<Pages> slip = draw_slip(cli::slip_matter(answer.value(), evening->answer, evening->evening), paper);
  ASSERT_TRUE(slip.ok());
  expect_uncut(slip.value(), "the slip");
}

// With the venue's plan too, and even where the slot is short; the first danger sign always stands.
TEST_P(DemoCards, CutNothingOfTheActionPlan) {
  const auto& [squad, paper] = GetParam();
  const std::optional<Evening> evening = evening_of(squad);
  ASSERT_TRUE(evening.has_value());
  CardMatter matter = cli::card_matter(evening->answer, evening->evening);
  for (const char* venue : {"millrace", "school-hall"}) {
    session::Strip strip;
    strip.venue = std::string(kRoot) + "/demo/quillmere/venues/" + venue + ".toml";
    const auto plan = cli::venue_plan_of(strip);
    ASSERT_TRUE(plan.ok() && plan.value());
    matter.action_plan = cli::action_plan_matter(*plan.value(), evening->evening.evening.date);
    const Result<Pages> card = draw_card(matter, paper);
    ASSERT_TRUE(card.ok());
    expect_uncut(card.value(), venue);
    const std::multiset<std::string> texts = texts_of(card.value());
    EXPECT_TRUE(texts.count(matter.danger_signs.front().signs));
    const ActionPlanMatter& said = matter.action_plan;
    for (const std::string* known :
         {&said.note, &said.emergency_number, &said.address, &said.way_in, &said.phone, &said.first_aid_bag,
          &said.stays_with_player, &said.calls, &said.meets_ambulance}) {
      EXPECT_TRUE(texts.count(*known)) << *known;
    }
  }
  EXPECT_EQ(matter.action_plan.lacks,
            "Plan incomplete: no defibrillator named, nobody minds the others, last rehearsal over a year ago.");
}

INSTANTIATE_TEST_SUITE_P(Every, DemoCards,
                         testing::Combine(testing::Values("u10-wrens", "u13-kestrels", "u16-merlins"),
                                          testing::Values(Paper::kA4, Paper::kUsLetter)));

const DrillMatter* drill_named(const CardMatter& matter, const std::string& name) {
  for (const DrillMatter& drill : matter.drills) {
    if (drill.name == name) return &drill;
  }
  return nullptr;
}

bool draws(const Pages& pages, const figure::Figure* figure) {
  for (const Page& side : pages.sides) {
    for (const Mark& mark : side.marks) {
      const Picture* picture = std::get_if<Picture>(&mark);
      if (picture != nullptr && picture->figure == figure) return true;
    }
  }
  return false;
}

// A coach who was never taught copies the picture: where the card says 'knees down', the knees are down.
TEST(DemoCardFigures, ASidePlankWithKneesDownIsDrawnOnBentKnees) {
  const std::optional<Evening> evening = evening_of("u13-kestrels");
  ASSERT_TRUE(evening.has_value());
  const CardMatter matter = cli::card_matter(evening->answer, evening->evening);
  const DrillMatter* plank = drill_named(matter, "Side plank");
  ASSERT_NE(plank, nullptr);
  ASSERT_EQ(plank->rung_words, "knees down");
  ASSERT_NE(plank->figure, nullptr);
  const Result<Pages> card = draw_card(matter, Paper::kA4);
  ASSERT_TRUE(card.ok());
  EXPECT_TRUE(draws(card.value(), plank->figure));

  const figure::Pose& pose = plank->figure->poses[static_cast<std::size_t>(plank->figure->main)];
  const figure::Stood stood = figure::scene_of(pose).figure;
  EXPECT_NEAR(figure::lowest(stood.body, {figure::ContactPart::kKnee, figure::kLeft}), 0, 0.015);
  for (int side = 0; side < 2; ++side) {
    const figure::Limbs& leg = stood.body.limbs[static_cast<std::size_t>(side)];
    const figure::Point thigh = leg.knee - leg.hip;
    const figure::Point shank = leg.ankle - leg.knee;
    const double cosine = (thigh.x * shank.x + thigh.y * shank.y + thigh.z * shank.z) /
                          (figure::skeleton::kThigh * figure::skeleton::kShank);
    EXPECT_LT(cosine, std::cos(60 * 3.14159265358979 / 180)) << side;  // bent by more than 60 degrees
    // As it is drawn, the shank lies along the ground and does not go on in the line of the thigh.
    EXPECT_LT(std::fabs(shank.y), 0.3 * std::fabs(shank.x)) << side;
    EXPECT_GT(std::fabs(thigh.y), 0.3 * std::fabs(thigh.x)) << side;
  }
}

// Every drill on every demo card is drawn as the rung that stands beside it.
TEST_P(DemoCards, DrawTheRungTheyName) {
  const auto& [squad, paper] = GetParam();
  const std::optional<Evening> evening = evening_of(squad);
  ASSERT_TRUE(evening.has_value());
  const CardMatter matter = cli::card_matter(evening->answer, evening->evening);
  const Result<Pages> card = draw_card(matter, paper);
  ASSERT_TRUE(card.ok());
  int own = 0;
  for (std::size_t i = 0; i < matter.drills.size(); ++i) {
    const session::Item& item = evening->answer.plan.session.items[i];
    const catalogue::Drill& drill = evening->evening.catalogue.drills[static_cast<std::size_t>(item.drill)];
    const catalogue::Rung& rung = drill.rungs[static_cast<std::size_t>(item.rung)];
    EXPECT_TRUE(draws(card.value(), rung.figure.empty() ? &drill.figure : &rung.figure)) << drill.name;
    own += rung.figure.empty() ? 0 : 1;
  }
  EXPECT_GT(own, 0);
}

}  // namespace
}  // namespace lanework::draw
