#include "core/care/entries/fold.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/care/entries/entry_story.h"
#include "tests/care/shipped_rules.h"

namespace lanework::care {
namespace {

using catalogue::BodyArea;
using test::cleared;
using test::hurt_at;
using test::sore_at;
using test::Story;

bool said(const Knowledge& known, const EntryId& entry, const std::string& words) {
  return std::any_of(known.remarks.begin(), known.remarks.end(), [&](const Remark& remark) {
    return remark.entry == entry && remark.words.find(words) != std::string::npos;
  });
}

TEST(Fold, NothingIsKnownOfNothing) {
  const Knowledge known = Story().fold();
  EXPECT_TRUE(known.standing.empty());
  EXPECT_FALSE(known.as_known);
}

TEST(Fold, AsKnownIsTheLatestReceipt) {
  Story story;
  story.add(By::kCoach, sore_at(BodyArea::kKnee, 0));
  const Knowledge known = story.fold();
  EXPECT_EQ(to_known_words(*known.as_known), "Sunday 20:10");
  EXPECT_TRUE(known.standing.empty());
}

TEST(Fold, HurtSitsOutUntilAClearanceNamesItAndTheLeadLifts) {
  Story story;
  const EntryId hurt = story.add(By::kCoach, hurt_at(BodyArea::kKnee));
  ASSERT_EQ(story.fold().standing.size(), 1U);
  EXPECT_TRUE(story.fold().standing.front().restriction.sits_out);
  EXPECT_TRUE(story.fold().standing.front().needs_clearance);
  const EntryId early = story.add(By::kLead, Lifted{{hurt}});
  EXPECT_EQ(story.fold().standing.size(), 1U);
  EXPECT_TRUE(said(story.fold(), early, "no clearance by a named clinician names it"));
  story.add(By::kClinician, cleared({"another"}));
  story.add(By::kLead, Lifted{{hurt}});
  EXPECT_EQ(story.fold().standing.size(), 1U) << "that one names another";
  story.add(By::kClinician, cleared({hurt}));
  EXPECT_EQ(story.fold().standing.size(), 1U) << "a clearance by itself lifts nothing";
  const EntryId coach = story.add(By::kCoach, Lifted{{hurt}});
  EXPECT_TRUE(said(story.fold(), coach, "the lead lifts"));
  EXPECT_EQ(story.fold().standing.size(), 1U);
  story.add(By::kLead, Lifted{{hurt}});
  EXPECT_TRUE(story.fold().standing.empty());
}

TEST(Fold, AClearanceNeedsAClinicianWithNameAndProfession) {
  for (const auto& [by, name, profession] :
       std::vector<std::tuple<By, std::string, std::string>>{{By::kLead, "A. Lead", "trainer"},
                                                             {By::kClinician, "", "physician"},
                                                             {By::kClinician, "A. Physician", " "}}) {
    Story story;
    const EntryId hurt = story.add(By::kCoach, hurt_at(BodyArea::kKnee));
    const EntryId clearance = story.add(by, ClearanceGiven{{hurt}, "", "", name, profession});
    story.add(By::kLead, Lifted{{hurt}});
    EXPECT_EQ(story.fold().standing.size(), 1U);
    EXPECT_TRUE(said(story.fold(), clearance, "a named clinician"));
  }
}

TEST(Fold, ALateHurtReopensUnlessTheClearanceNamesIt) {
  for (const bool named : {false, true}) {
    Story story;
    const EntryId first = story.add(By::kCoach, hurt_at(BodyArea::kKnee));
    story.add(By::kClinician, cleared(named ? EntryIds{first, "e4"} : EntryIds{first}));
    story.add(By::kLead, Lifted{{first}});
    ASSERT_TRUE(story.fold().standing.empty());
    // The second coach's phone had no signal: its clock says before the clearance.
    const EntryId late = story.add(By::kCoach, hurt_at(BodyArea::kKnee));
    story.last().device_time = "2026-11-22T19:00";
    EXPECT_EQ(story.fold().standing.empty(), named);
    EXPECT_EQ(said(story.fold(), late, "received late; the clearance e2 names it"), named);
  }
}

TEST(Fold, AHeadIsNeverLiftedOnTheSameDay) {
  for (const auto place : {std::optional(BodyArea::kHead), std::optional(BodyArea::kNeck), std::optional<BodyArea>()}) {
    Story story;
    const EntryId hurt = story.add(By::kCoach, hurt_at(place));
    story.add(By::kClinician, cleared({hurt}));
    const EntryId lift = story.add(By::kLead, Lifted{{hurt}}, 22);
    EXPECT_EQ(story.fold().standing.size(), 1U);
    EXPECT_TRUE(said(story.fold(), lift, "never on the same day: not before 24 h (unverified"));
    story.add(By::kLead, Lifted{{hurt}});
    EXPECT_TRUE(story.fold().standing.empty());
  }
}

TEST(Fold, SorenessFollowsThePainRule) {
  Story story;
  const EntryId sore = story.add(By::kPlayer, sore_at(BodyArea::kKnee, 3));
  ASSERT_EQ(story.fold().standing.size(), 1U);
  EXPECT_FALSE(story.fold().standing.front().restriction.sits_out);
  EXPECT_EQ(story.fold().standing.front().restriction.areas, std::vector<BodyArea>{BodyArea::kKnee});
  // Less the next day takes nothing away.
  const EntryId less = story.add(By::kPlayer, sore_at(BodyArea::kKnee, 0), 24);
  ASSERT_EQ(story.fold().standing.size(), 1U);
  story.add(By::kLead, Lifted{{sore, less}});
  EXPECT_TRUE(story.fold().standing.empty());
}

TEST(Fold, SorenessThatIsSeenByAClinicianNeedsOne) {
  Story story;
  const EntryId sore = story.add(By::kCoach, sore_at(BodyArea::kKnee, 5));
  story.add(By::kLead, Lifted{{sore}});
  ASSERT_EQ(story.fold().standing.size(), 1U);
  EXPECT_TRUE(story.fold().standing.front().restriction.sits_out);
  story.add(By::kClinician, cleared({sore}));
  story.add(By::kLead, Lifted{{sore}});
  EXPECT_TRUE(story.fold().standing.empty());
}

TEST(Fold, ARestrictionHoldsToItsEndAndAReviewMovesNoEnd) {
  Story story;
  people::Restriction restriction;
  restriction.kinds = {catalogue::StressKind::kImpact};
  restriction.until = make_date(2026, 12, 3);
  restriction.review = make_date(2026, 12, 1);
  const EntryId set = story.add(By::kLead, RestrictionSet{restriction});
  const EntryId coach = story.add(By::kCoach, Reviewed{{set}, make_date(2026, 11, 30)});
  EXPECT_TRUE(said(story.fold(), coach, "refused"));
  story.add(By::kLead, Reviewed{{set}, make_date(2026, 12, 2)});
  const auto standing = story.fold().standing;
  ASSERT_EQ(standing.size(), 1U);
  EXPECT_EQ(standing.front().restriction.review, make_date(2026, 12, 2));
  EXPECT_EQ(holding_on(standing, *make_date(2026, 12, 3)).size(), 1U);
  EXPECT_TRUE(holding_on(standing, *make_date(2026, 12, 4)).empty());
  story.add(By::kLead, Lifted{{set}});
  EXPECT_TRUE(story.fold().standing.empty());
}

TEST(Fold, TheSameEntryAgainChangesNothing) {
  Story story;
  const EntryId hurt = story.add(By::kCoach, hurt_at(BodyArea::kKnee));
  story.add(By::kClinician, cleared({hurt}));
  story.add(By::kLead, Lifted{{hurt}});
  Entry again = story.entries().front();
  again.receipt = 9;
  auto entries = story.entries();
  entries.push_back(again);
  const Knowledge known = fold(entries, test::pain_rule(), test::return_rules());
  EXPECT_TRUE(known.standing.empty());
  EXPECT_TRUE(known.remarks.empty());
}

TEST(Fold, TheSameIdWithOtherContentOnlyAddsCaution) {
  Story story;
  const EntryId hurt = story.add(By::kCoach, hurt_at(BodyArea::kKnee));
  story.add(By::kClinician, cleared({hurt}));
  story.add(By::kLead, Lifted{{hurt}});
  auto entries = story.entries();
  Entry other = entries.front();
  other.receipt = 9;
  other.what = hurt_at(BodyArea::kAnkle);
  entries.push_back(other);
  const Knowledge known = fold(entries, test::pain_rule(), test::return_rules());
  ASSERT_EQ(known.standing.size(), 1U);
  EXPECT_EQ(known.standing.front().stems_from, EntryIds{"e1#9"});
  EXPECT_TRUE(said(known, "e1", "adds its caution"));
  entries = {entries[0]};
  other.what = cleared({hurt});
  entries.push_back(other);
  EXPECT_TRUE(said(fold(entries, test::pain_rule(), test::return_rules()), "e1", "does not count"));
}

// Found by fuzz_care: each content counts once, not only the first.
TEST(Fold, TheSameIdWithOtherContentSentAgainChangesNothing) {
  Story story;
  story.add(By::kCoach, hurt_at(BodyArea::kKnee));
  auto entries = story.entries();
  Entry other = entries.front();
  other.receipt = 9;
  other.what = hurt_at(BodyArea::kAnkle);
  entries.push_back(other);
  const Knowledge once = fold(entries, test::pain_rule(), test::return_rules());
  other.receipt = 12;
  entries.push_back(other);
  Entry first_again = entries.front();
  first_again.receipt = 13;
  entries.push_back(first_again);
  const Knowledge twice = fold(entries, test::pain_rule(), test::return_rules());
  ASSERT_EQ(twice.standing.size(), 2U);
  EXPECT_EQ(twice.standing.back().stems_from, EntryIds{"e1#9"});
  EXPECT_EQ(twice.remarks, once.remarks);
}

TEST(Fold, OneEntryByTwoClocksIsOneWhateverTheOrder) {
  Story story;
  story.add(By::kCoach, hurt_at(BodyArea::kKnee));
  auto entries = story.entries();
  entries.push_back(entries.front());
  entries.back().received.offset_minutes = 0;
  const Knowledge known = fold(entries, test::pain_rule(), test::return_rules());
  std::swap(entries.front(), entries.back());
  EXPECT_EQ(fold(entries, test::pain_rule(), test::return_rules()).as_known, known.as_known);
}

TEST(Fold, ACorrectionNeverLessensCautionByItself) {
  Story story;
  const EntryId hurt = story.add(By::kCoach, hurt_at(BodyArea::kKnee));
  const EntryId right = story.add(By::kCoach, hurt_at(BodyArea::kKnee), 1, "Q15");
  story.last().corrects = hurt;
  const Knowledge known = story.fold();
  EXPECT_EQ(known.standing.size(), 2U) << "both sit out";
  EXPECT_TRUE(said(known, right, "corrects e1, which stands too"));
  story.add(By::kLead, Withdrawn{});
  story.last().corrects = hurt;
  EXPECT_EQ(story.fold().standing.size(), 2U);
}

TEST(Fold, AClearanceOrALiftingTakenBackHoldsAgain) {
  for (const int which : {1, 2}) {
    Story story;
    const EntryId hurt = story.add(By::kCoach, hurt_at(BodyArea::kKnee));
    story.add(By::kClinician, cleared({hurt}));
    story.add(By::kLead, Lifted{{hurt}});
    ASSERT_TRUE(story.fold().standing.empty());
    story.add(By::kCoach, Withdrawn{});
    story.last().corrects = story.entries()[static_cast<std::size_t>(which)].id;
    EXPECT_EQ(story.fold().standing.size(), 1U) << which;
  }
}

TEST(Fold, TakenBackBeforeItArrives) {
  Story story;
  const EntryId hurt = story.add(By::kCoach, hurt_at(BodyArea::kKnee));
  story.add(By::kClinician, Withdrawn{});
  story.last().corrects = "e3";
  story.add(By::kClinician, cleared({hurt}));
  story.add(By::kLead, Lifted{{hurt}});
  EXPECT_EQ(story.fold().standing.size(), 1U);
}

TEST(Fold, AClearanceForOnePlayerLiftsNobodyElse) {
  Story story;
  const EntryId hurt = story.add(By::kCoach, hurt_at(BodyArea::kKnee));
  story.add(By::kClinician, cleared({hurt}), 1, "Q15");
  story.add(By::kLead, Lifted{{hurt}});
  EXPECT_EQ(story.fold().standing.size(), 1U);
}

TEST(Fold, DeviceClocksOrderNothing) {
  Story story;
  const EntryId hurt = story.add(By::kCoach, hurt_at(BodyArea::kKnee));
  story.last().device_time = "2031-01-01T00:00";
  story.add(By::kClinician, cleared({hurt}));
  story.last().device_time = "1999-01-01T00:00";
  story.add(By::kLead, Lifted{{hurt}});
  EXPECT_TRUE(story.fold().standing.empty());
}

// ---- courses -------------------------------------------------------------------------------------------------------

// A boy at step 3 after a concussion; the course is e2.
Story at_step_three() {
  Story story;
  const EntryId hurt = story.add(By::kCoach, hurt_at(BodyArea::kHead));
  const EntryId course = story.add(By::kLead, CourseOpened{"concussion", "symptom-free-14-days", {hurt}, 14});
  const auto well = [&] { story.add(By::kPlayer, SymptomCheck{course, SymptomCheck::Told::kNone, {}, {}, true}); };
  story.add(By::kLead, StepBegun{course, "daily-life"});
  well();
  story.add(By::kClinician, cleared({hurt}, course, "seen"));
  story.add(By::kLead, StepBegun{course, "easy-aerobic"}, 24);
  well();
  story.add(By::kLead, StepBegun{course, "own-sport"}, 24);
  return story;
}

TEST(FoldCourse, StepThreeIsHeldAsItsRestrictions) {
  const Knowledge known = at_step_three().fold();
  EXPECT_TRUE(known.remarks.empty());
  ASSERT_EQ(known.courses.size(), 1U);
  EXPECT_EQ(known.courses.front().state.step, 2);
  EXPECT_EQ(known.courses.front().carries, EntryIds{"e1"});
  ASSERT_EQ(known.standing.size(), 2U);
  EXPECT_EQ(known.standing.front().restriction.instruction, "no contact");
  EXPECT_TRUE(known.standing.front().needs_clearance);
}

TEST(FoldCourse, ACarriedHurtIsLiftedByNobodyBeforeTheLastStep) {
  Story story = at_step_three();
  story.add(By::kClinician, cleared({"e1"}));
  const EntryId lift = story.add(By::kLead, Lifted{{"e1", "e2"}});
  EXPECT_TRUE(said(story.fold(), lift, "carried by a return course"));
  EXPECT_TRUE(said(story.fold(), lift, "after its last step has begun"));
  EXPECT_EQ(story.fold().standing.size(), 2U);
}

TEST(FoldCourse, AnotherHeadHurtStartsItAnewAnAnkleStandsByItself) {
  Story story = at_step_three();
  const EntryId ankle = story.add(By::kCoach, hurt_at(BodyArea::kAnkle));
  EXPECT_EQ(story.fold().courses.front().state.step, 2);
  EXPECT_EQ(story.fold().standing.size(), 3U);
  const EntryId head = story.add(By::kCoach, hurt_at(BodyArea::kHead));
  EXPECT_TRUE(said(story.fold(), head, "starts the course e2 anew"));
  EXPECT_EQ(story.fold().courses.front().state.step, 0);
  EXPECT_EQ(story.fold().courses.front().carries, (EntryIds{"e1", head}));
  const EntryId gate = story.add(By::kClinician, cleared({"e1"}, "e2", "seen"), 30);
  EXPECT_TRUE(said(story.fold(), gate, "does not name every hurt"));
  EXPECT_FALSE(ankle.empty());
}

TEST(FoldCourse, ALateHeadHurtThatTheClearanceNamesChangesNothing) {
  Story story = at_step_three();
  auto entries = story.entries();
  std::get<ClearanceGiven>(entries[4].what).names.push_back("late");
  Entry late = entries.front();
  late.id = "late";
  late.receipt = 50;
  late.received = entries.back().received;
  entries.push_back(late);
  const Knowledge known = fold(entries, test::pain_rule(), test::return_rules());
  EXPECT_EQ(known.courses.front().state.step, 2);
  EXPECT_TRUE(said(known, "late", "a clearance of the course e2 names it"));
}

TEST(FoldCourse, AHeadIsNotCarriedByTheGeneralCourse) {
  for (const auto place : {std::optional(BodyArea::kHead), std::optional<BodyArea>()}) {
    Story story;
    const EntryId hurt = story.add(By::kCoach, hurt_at(place));
    const EntryId course = story.add(By::kLead, CourseOpened{"general", "", {hurt}, 14});
    EXPECT_TRUE(said(story.fold(), course, "may not carry e1"));
    EXPECT_EQ(story.fold().standing.size(), 2U);
  }
}

TEST(FoldCourse, SymptomsAtACourseThatIsNotKnownHoldBackByThemselves) {
  Story story;
  const EntryId check = story.add(By::kPlayer, SymptomCheck{"lost", SymptomCheck::Told::kWorse, {}, {}, false});
  const Knowledge known = story.fold();
  ASSERT_EQ(known.standing.size(), 1U);
  EXPECT_TRUE(known.standing.front().restriction.sits_out);
  EXPECT_TRUE(said(known, check, "was not received before it"));
}

TEST(FoldCourse, UnverifiedRulesAreSaidWhereTheyDecide) {
  Story story = at_step_three();
  const EntryId mild = story.add(By::kPlayer, SymptomCheck{"e2", SymptomCheck::Told::kWorse, 1, 20, true});
  EXPECT_TRUE(said(story.fold(), mild, "unverified: the careful side"));
}

TEST(FoldCourse, AStepOrAGateTakenBackStepsBack) {
  Story story = at_step_three();
  story.add(By::kCoach, Withdrawn{});
  story.last().corrects = "e8";
  EXPECT_EQ(story.fold().courses.front().state.step, 1);
  EXPECT_FALSE(story.fold().courses.front().state.begun);
  Story other = at_step_three();
  other.add(By::kClinician, Withdrawn{});
  other.last().corrects = "e5";
  EXPECT_EQ(other.fold().courses.front().state.step, 0);
  EXPECT_EQ(other.fold().courses.front().state.open_gates, 0U);
}

TEST(FoldCourse, TheYoungerOfTwoAgesHoldsAndNoneIsAChilds) {
  const auto hours_of = [](std::optional<int> stated, const Ages& ages) {
    Story story;
    story.add(By::kLead, CourseOpened{"concussion", "symptom-free-14-days", {}, stated});
    const Course course = story.fold(ages).courses.front().in_force.course;
    return course.gate(*course.gate_with("contact")).symptom_free_hours;
  };
  EXPECT_EQ(hours_of(25, {}), 0);
  EXPECT_EQ(hours_of(25, {{"Q14", 17}}), 14 * 24);
  EXPECT_EQ(hours_of(17, {{"Q14", 25}}), 14 * 24);
  EXPECT_EQ(hours_of({}, {}), 14 * 24);
}

// From step 3 to match play and over, by all its gates.
Story over() {
  Story story = at_step_three();
  const auto well = [&] { story.add(By::kPlayer, SymptomCheck{"e2", SymptomCheck::Told::kNone, {}, {}, true}); };
  well();
  story.add(By::kClinician, cleared({"e1"}, "e2", "head-impact-risk"));
  story.add(By::kLead, StepBegun{"e2", "team-drills"}, 24);
  well();
  story.add(By::kClinician, cleared({"e1"}, "e2", "contact"), 14 * 24);
  story.add(By::kLead, StepBegun{"e2", "full-practice"});
  well();
  story.add(By::kLead, StepBegun{"e2", "match"}, 24);
  story.add(By::kLead, Lifted{{"e2"}});
  return story;
}

TEST(FoldCourse, OverAtTheLastStepItHoldsNothingAndSymptomsOpenItAgain) {
  Story story = over();
  EXPECT_TRUE(story.fold().remarks.empty());
  EXPECT_TRUE(story.fold().standing.empty());
  EXPECT_TRUE(story.fold().courses.front().closed);
  story.add(By::kPlayer, SymptomCheck{"e2", SymptomCheck::Told::kNoWorse, {}, {}, false});
  EXPECT_FALSE(story.fold().courses.front().closed);
  EXPECT_EQ(story.fold().courses.front().state.step, 2);
  ASSERT_EQ(story.fold().standing.size(), 1U);
  EXPECT_TRUE(story.fold().standing.front().restriction.sits_out);
}

TEST(FoldCourse, AHurtAfterItIsOverStandsByItself) {
  Story story = over();
  story.add(By::kCoach, hurt_at(BodyArea::kHead));
  EXPECT_TRUE(story.fold().courses.front().closed);
  ASSERT_EQ(story.fold().standing.size(), 1U);
  EXPECT_TRUE(story.fold().standing.front().needs_clearance);
}

// A receiver's clock that is set back makes no step shorter.
TEST(FoldCourse, HoursCountFromTheLatestTimeTheReceiverHasShown) {
  Story story;
  const EntryId course = story.add(By::kLead, CourseOpened{"concussion", "consensus", {}, 25});
  story.add(By::kLead, StepBegun{course, "daily-life"});
  story.add(By::kPlayer, SymptomCheck{course, SymptomCheck::Told::kNone, {}, {}, true});
  story.add(By::kClinician, cleared({}, course, "seen"));
  story.add(By::kLead, StepBegun{course, "easy-aerobic"}, -30);
  EXPECT_TRUE(said(story.fold(), "e5", "clock went back"));
  EXPECT_EQ(story.fold().courses.front().state.step, 0);
}

}  // namespace
}  // namespace lanework::care
