// Which rungs are put before the lead, and that nothing but a row of like sessions puts them there.
#include "core/block/rung_proposals.h"

#include <gtest/gtest.h>

#include "tests/block/drawn_squads.h"

namespace lanework::block {
namespace {

using Happened = Report::Happened;

int drill_in(const Outline& outline, const char* id) {
  return static_cast<int>(outline.catalogue->find(id) - outline.catalogue->drills.data());
}

struct Told {
  Happened happened = Happened::kHeld;
  int quarters = 4;
  bool left_out = false;
  bool done = true;
  int rung = 0;
};

// A squad that has one drill in its sets, and did what is told with it, session by session.
Outline told(const char* id, const std::vector<Told>& sessions, int age = 16) {
  Outline outline = draw_squad(1, {.sessions_a_week = 3});
  for (session::Evening& evening : outline.evenings) {
    evening.age = age;
    evening.restrictions.clear();
    evening.bans.clear();
  }
  const int drill = drill_in(outline, id);
  Rolling rolling;
  rolling.standing.sets.assign(2, {drill});
  for (std::size_t e = 0; e < sessions.size(); ++e) {
    const Told& one = sessions[e];
    PastSession past;
    past.evening = e;
    past.report = {one.happened, {}, one.quarters, {}};
    if (one.left_out) past.report.left_out = {drill};
    past.items = {{{drill, one.rung, 0, 0}, one.done, one.done}};
    rolling.past.push_back(past);
  }
  rolling.today = outline.evenings[sessions.size()].date;
  outline.rolling = std::move(rolling);
  return outline;
}

std::string proposed(const Outline& outline) {
  std::string out;
  for (const RungProposal& one : rung_proposals(outline))
    out += std::to_string(one.from) + ">" + std::to_string(one.to) + " after " + std::to_string(one.sessions) + ";";
  return out;
}

constexpr Told kWell{};
constexpr Told kFew{.quarters = 1};
constexpr Told kHalf{.quarters = 2};
constexpr Told kLeftOut{.left_out = true, .done = false};
constexpr Told kNoWord{.happened = Happened::kNoWord, .done = false};
constexpr Told kMissed{.happened = Happened::kMissed, .done = false};
constexpr Told kNoTime{.happened = Happened::kCutShort, .done = false};

TEST(RungProposals, UpAfterFourThatMostDid) {
  EXPECT_EQ(proposed(told("squat", {kWell, kWell, kWell})), "");
  EXPECT_EQ(proposed(told("squat", {kWell, kWell, kWell, kWell})), "0>1 after 4;");
  EXPECT_EQ(proposed(told("squat", {kFew, kWell, kWell, kWell, kWell})), "0>1 after 4;");
}

TEST(RungProposals, DownAfterTwoThatHardlyAnybodyDid) {
  Told high = kFew;
  high.rung = 1;
  Told left_out = kLeftOut;
  left_out.rung = 1;
  EXPECT_EQ(proposed(told("squat", {high})), "");
  EXPECT_EQ(proposed(told("squat", {high, left_out})), "1>0 after 2;");
  EXPECT_EQ(proposed(told("squat", {kFew, kLeftOut})), "") << "there is none easier";
}

TEST(RungProposals, WhatSaysNothingBreaksNoRow) {
  EXPECT_EQ(proposed(told("squat", {kWell, kNoWord, kWell, kMissed, kWell, kNoTime, kWell})), "0>1 after 4;");
}

TEST(RungProposals, WhatSaysOtherwiseBreaksIt) {
  for (const Told& other : {kHalf, kFew, kLeftOut}) {
    EXPECT_EQ(proposed(told("squat", {kWell, kWell, other, kWell, kWell})), "");
  }
  Told easier = kWell;
  Told harder = kWell;
  harder.rung = 1;
  EXPECT_EQ(proposed(told("squat", {easier, easier, easier, easier, harder})), "") << "four, but on another rung";
}

TEST(RungProposals, NoRungThatIsNotThereOrNotOpen) {
  const Outline outline = told("squat", {kWell});
  const catalogue::Drill& squat = outline.catalogue->drills[static_cast<std::size_t>(drill_in(outline, "squat"))];
  Told highest = kWell;
  highest.rung = static_cast<int>(squat.rungs.size()) - 1;
  EXPECT_EQ(proposed(told("squat", {highest, highest, highest, highest})), "");
  // Both heels slide out together only from thirteen on.
  Told four_steps = kWell;
  four_steps.rung = 1;
  EXPECT_EQ(proposed(told("walking-bridge", {four_steps, four_steps, four_steps, four_steps}, 12)), "");
  EXPECT_EQ(proposed(told("walking-bridge", {four_steps, four_steps, four_steps, four_steps}, 13)), "1>2 after 4;");
}

TEST(RungProposals, NotWhatIsConfirmed) {
  Outline outline = told("squat", {kWell, kWell, kWell, kWell});
  const catalogue::Drill& squat = outline.catalogue->drills[static_cast<std::size_t>(drill_in(outline, "squat"))];
  outline.rungs["squat"].assign(static_cast<std::size_t>(outline.weeks), "");
  outline.rungs["squat"].back() = squat.rungs[1].key;
  EXPECT_EQ(proposed(outline), "");
}

TEST(RungProposals, AFewAtATime) {
  Outline outline = told("squat", {kWell, kWell, kWell, kWell});
  std::vector<int>& set = outline.rolling->standing.sets[1];
  for (const char* id : {"front-plank", "bridge", "side-plank", "jump-and-stick", "single-leg-stance"}) {
    set.push_back(drill_in(outline, id));
    for (PastSession& past : outline.rolling->past) past.items.push_back({{set.back(), 0, 0, 0}, true, true});
  }
  const std::vector<RungProposal> found = rung_proposals(outline);
  ASSERT_EQ(found.size(), kMostToGoUp);
  const auto weight = [&](const RungProposal& one) {
    const catalogue::Catalogue& catalogue = *outline.catalogue;
    return catalogue.family(catalogue.drills[static_cast<std::size_t>(one.drill)].family).weight;
  };
  for (std::size_t i = 1; i < found.size(); ++i) EXPECT_GE(weight(found[i - 1]), weight(found[i]));
}

}  // namespace
}  // namespace lanework::block
