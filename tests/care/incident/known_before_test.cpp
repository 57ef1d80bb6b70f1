#include "core/care/incident/known_before.h"

#include <gtest/gtest.h>

#include "tests/care/entries/entry_story.h"
#include "tests/care/shipped_rules.h"

namespace lanework::care {
namespace {

using catalogue::BodyArea;
using test::hurt_at;
using test::Story;

// The story's first entry is received on Sunday 22 November 2026 at 20:10.
Incident incident_at(int day, std::optional<TimeOfDay> time = {}) {
  Incident out;
  out.player = "Q14";
  out.date = *make_date(2026, 11, day);
  out.time = time;
  return out;
}

KnownBefore known(const Story& story, const Incident& incident) {
  return known_before(story.entries(), incident, test::pain_rule(), test::return_rules(), {});
}

people::Restriction no_jumping() {
  people::Restriction out;
  out.kinds = {catalogue::StressKind::kImpact};
  out.until = make_date(2026, 11, 24);
  out.instruction = "no jumping";
  return out;
}

TEST(KnownBefore, NothingReceivedIsNothingKnown) {
  const KnownBefore none = known({}, incident_at(24));
  EXPECT_FALSE(none.as_known);
  EXPECT_TRUE(none.held.empty() && none.hurts.empty() && none.courses.empty());
}

TEST(KnownBefore, WhatStandsComesWithTheEntriesItStemsFrom) {
  Story story;
  const EntryId set = story.add(By::kLead, RestrictionSet{no_jumping()});
  const EntryId sore = story.add(By::kCoach, test::sore_at(BodyArea::kAnkle, 3));
  const EntryId hurt = story.add(By::kCoach, hurt_at(BodyArea::kKnee));
  story.add(By::kCoach, hurt_at(BodyArea::kHead), 1, "Q15");
  const KnownBefore found = known(story, incident_at(24));
  ASSERT_EQ(found.held.size(), 2U);
  EXPECT_EQ(found.held[0].restriction.instruction, "no jumping");
  EXPECT_EQ(found.held[0].stems_from.front().id, set);
  EXPECT_EQ(found.held[1].stems_from.front().id, sore);
  ASSERT_EQ(found.hurts.size(), 1U) << "and nothing of another player";
  EXPECT_EQ(found.hurts.front().id, hurt);
  EXPECT_EQ(found.as_known, story.entries().back().received) << "whoever it was about";
  EXPECT_EQ(known(story, incident_at(25)).held.size(), 1U) << "over on the day before";
}

TEST(KnownBefore, WhatIsLiftedIsNotToldAndWhatIsLiftedLaterIs) {
  Story story;
  const EntryId hurt = story.add(By::kCoach, hurt_at(BodyArea::kKnee));
  story.add(By::kClinician, test::cleared({hurt}));
  story.add(By::kLead, Lifted{{hurt}}, 48);
  EXPECT_EQ(known(story, incident_at(24)).hurts.size(), 1U);
  EXPECT_TRUE(known(story, incident_at(25)).hurts.empty());
}

TEST(KnownBefore, OnlyWhatWasReceivedBeforeItsMinute) {
  Story story;
  story.add(By::kCoach, hurt_at(BodyArea::kKnee));
  const auto hurts = [&](std::optional<TimeOfDay> time) { return known(story, incident_at(22, time)).hurts.size(); };
  EXPECT_EQ(hurts(TimeOfDay{20 * 60 + 11}), 1U);
  EXPECT_EQ(hurts(TimeOfDay{20 * 60 + 10}), 0U) << "may be the incident itself";
  EXPECT_EQ(hurts({}), 0U) << "the day's own entries may be about it";
  EXPECT_EQ(known(story, incident_at(23)).hurts.size(), 1U);
  EXPECT_FALSE(known(story, incident_at(22)).as_known);
}

TEST(KnownBefore, ACourseIsToldOnceWithTheHurtsThatItCarries) {
  Story story;
  const EntryId hurt = story.add(By::kCoach, hurt_at(BodyArea::kHead));
  const EntryId course = story.add(By::kLead, CourseOpened{"concussion", "", {hurt}, 12});
  story.add(By::kLead, StepBegun{course, "daily-life"}, 30);
  const KnownBefore found = known(story, incident_at(26));
  EXPECT_TRUE(found.held.empty());
  ASSERT_EQ(found.hurts.size(), 1U);
  EXPECT_EQ(found.hurts.front().id, hurt);
  ASSERT_EQ(found.courses.size(), 1U);
  EXPECT_TRUE(found.courses.front().state.begun);
  EXPECT_FALSE(known(story, incident_at(23)).courses.front().state.begun) << "as it stood by then";
}

TEST(KnownBefore, AnIdThatCameWithTwoContentsIsTwoHurts) {
  Story story;
  story.add(By::kCoach, hurt_at(BodyArea::kKnee));
  story.add(By::kCoach, hurt_at(BodyArea::kAnkle));
  story.last().id = "e1";
  const KnownBefore found = known(story, incident_at(24));
  ASSERT_EQ(found.hurts.size(), 2U);
  EXPECT_EQ(std::get<Hurt>(found.hurts[0].what).place, BodyArea::kKnee);
  EXPECT_EQ(std::get<Hurt>(found.hurts[1].what).place, BodyArea::kAnkle);
}

}  // namespace
}  // namespace lanework::care
