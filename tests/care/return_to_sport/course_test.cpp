#include "core/care/return_to_sport/course.h"

#include <gtest/gtest.h>

#include "core/care/return_to_sport/heart_rate.h"
#include "tests/care/shipped_rules.h"

namespace lanework::care {
namespace {

constexpr Moment kStart{1000000};
const Clearance kNamed{0, "A. Physician", "physician", true};

Moment at(int hours) { return hours_after(kStart, hours); }

// A course driven by hand, hour by hour.
class Driven {
 public:
  explicit Driven(const char* course, const char* rules = "consensus", std::optional<int> age = 25)
      : course_(course_in_force(test::return_rules(), course, rules, age).course), state_(opened(kStart)) {}

  bool take(const CourseEvent& event, By by, int hour) {
    const Transition next = transition(course_, state_, event, by, at(hour));
    if (const auto* refusal = std::get_if<Refusal>(&next)) {
      refusal_ = *refusal;
      EXPECT_FALSE(refusal->reason.empty());
      EXPECT_FALSE(refusal->needed.empty());
      return false;
    }
    state_ = std::get<CourseState>(next);
    return true;
  }
  bool begin(const char* step, int hour, By by = By::kLead) {
    return take(BeginStep{*course_.step_with(step)}, by, hour);
  }
  bool well(int hour) { return take(Check{Symptoms::kNone, true}, By::kPlayer, hour); }
  bool check(Symptoms symptoms, int hour) { return take(Check{symptoms, false}, By::kPlayer, hour); }
  bool clear(const char* gate, int hour) {
    Clearance clearance = kNamed;
    clearance.gate = *course_.gate_with(gate);
    return take(clearance, By::kClinician, hour);
  }
  // As far as team drills of a concussion, begun after 72 h.
  void to_team_drills() {
    ASSERT_TRUE(begin("daily-life", 0) && well(1) && clear("seen", 2));
    ASSERT_TRUE(begin("easy-aerobic", 24) && well(25));
    ASSERT_TRUE(begin("own-sport", 48) && well(49) && clear("head-impact-risk", 50));
    ASSERT_TRUE(begin("team-drills", 72));
  }

  [[nodiscard]] const CourseState& state() const { return state_; }
  [[nodiscard]] const Course& course() const { return course_; }
  [[nodiscard]] const std::string& key() const { return course_.step(state_.step).key; }
  [[nodiscard]] const Refusal& refusal() const { return refusal_; }

 private:
  Course course_;
  CourseState state_;
  Refusal refusal_;
};

TEST(Course, NothingBeginsByTimeAlone) {
  Driven boy("concussion");
  const auto held = restrictions_at(boy.course(), boy.state(), {});
  ASSERT_EQ(held.size(), 1U);
  EXPECT_TRUE(held.front().sits_out);
  EXPECT_FALSE(boy.state().begun);
}

TEST(Course, TheWholeWayOfAnAdult) {
  Driven player("concussion");
  player.to_team_drills();
  EXPECT_TRUE(player.well(73) && player.clear("contact", 74));
  EXPECT_TRUE(player.begin("full-practice", 96) && player.well(97));
  EXPECT_FALSE(player.begin("match", 119));
  EXPECT_EQ(player.refusal().needed, "at least 24 h at the step before");
  EXPECT_TRUE(player.begin("match", 120));
  EXPECT_TRUE(restrictions_at(player.course(), player.state(), {}).empty());
  EXPECT_FALSE(waiting_at(player.course(), player.state()));
}

TEST(Course, StepFourIsRefusedWithoutAClearance) {
  Driven boy("concussion");
  ASSERT_TRUE(boy.begin("daily-life", 0) && boy.well(1) && boy.clear("seen", 2));
  ASSERT_TRUE(boy.begin("easy-aerobic", 24) && boy.well(25) && boy.begin("own-sport", 48) && boy.well(49));
  EXPECT_FALSE(boy.begin("team-drills", 1000));
  EXPECT_NE(boy.refusal().needed.find("clearance of a named clinician"), std::string::npos);
  EXPECT_TRUE(boy.clear("head-impact-risk", 1000) && boy.begin("team-drills", 1000));
}

TEST(Course, AClearanceNeedsANameAProfessionAndEveryHurt) {
  Driven boy("concussion");
  ASSERT_TRUE(boy.begin("daily-life", 0) && boy.well(1));
  EXPECT_FALSE(boy.take(kNamed, By::kLead, 2));
  EXPECT_FALSE(boy.take(kNamed, By::kCoach, 2));
  EXPECT_FALSE(boy.take(Clearance{0, " ", "physician", true}, By::kClinician, 2));
  EXPECT_FALSE(boy.take(Clearance{0, "A. Physician", "", true}, By::kClinician, 2));
  EXPECT_FALSE(boy.take(Clearance{0, "A. Physician", "physician", false}, By::kClinician, 2));
  EXPECT_FALSE(boy.take(Clearance{7, "A. Physician", "physician", true}, By::kClinician, 2));
  EXPECT_EQ(boy.state().open_gates, 0U);
  EXPECT_TRUE(boy.take(kNamed, By::kClinician, 2));
}

TEST(Course, AClearanceOpensTheNextGateOnly) {
  Driven boy("concussion");
  ASSERT_TRUE(boy.begin("daily-life", 0) && boy.well(1));
  EXPECT_FALSE(boy.clear("contact", 2));
  EXPECT_EQ(boy.refusal().reason, "a clearance opens the next gate only");
}

TEST(Course, NoStepIsPassedOverOrBegunByACoach) {
  Driven boy("concussion");
  EXPECT_FALSE(boy.begin("daily-life", 0, By::kCoach));
  EXPECT_FALSE(boy.begin("daily-life", 0, By::kPlayer));
  EXPECT_FALSE(boy.begin("easy-aerobic", 30));
  EXPECT_TRUE(boy.begin("daily-life", 30, By::kClinician));
  EXPECT_FALSE(boy.begin("daily-life", 31));
  EXPECT_FALSE(boy.begin("own-sport", 90));
  ASSERT_TRUE(boy.well(60) && boy.clear("seen", 60));
  EXPECT_FALSE(boy.begin("easy-aerobic", 53));
  EXPECT_TRUE(boy.begin("easy-aerobic", 54));
  EXPECT_FALSE(boy.begin("daily-life", 100));
}

TEST(Course, AnySymptomFromTeamDrillsOnSetsBackToStepThreeAndShutsTheGates) {
  for (const Symptoms symptoms : {Symptoms::kNoWorse, Symptoms::kMild, Symptoms::kWorse}) {
    Driven boy("concussion");
    boy.to_team_drills();
    ASSERT_TRUE(boy.well(73) && boy.clear("contact", 74) && boy.begin("full-practice", 96));
    ASSERT_TRUE(boy.check(symptoms, 97));
    EXPECT_EQ(boy.key(), "own-sport");
    EXPECT_FALSE(boy.state().begun);
    EXPECT_TRUE(restrictions_at(boy.course(), boy.state(), {}).front().sits_out);
    ASSERT_TRUE(boy.well(98));
    EXPECT_FALSE(boy.begin("own-sport", 120)) << "stop for the day: 24 h";
    EXPECT_TRUE(boy.begin("own-sport", 121) && boy.well(122));
    EXPECT_FALSE(boy.begin("team-drills", 200)) << "the old clearance does not count any more";
    EXPECT_TRUE(boy.clear("head-impact-risk", 200) && boy.begin("team-drills", 200));
  }
}

TEST(Course, MildAndBriefHoldsWhileNobodyHasReadTheRule) {
  Driven boy("concussion");
  ASSERT_TRUE(boy.begin("daily-life", 0) && boy.well(1) && boy.clear("seen", 2) && boy.begin("easy-aerobic", 24));
  ASSERT_TRUE(boy.check(Symptoms::kMild, 40));
  EXPECT_EQ(boy.key(), "easy-aerobic");
  EXPECT_TRUE(boy.state().begun);
  ASSERT_TRUE(boy.well(41));
  EXPECT_FALSE(boy.begin("own-sport", 63));
  EXPECT_TRUE(boy.begin("own-sport", 64)) << "24 h from the check on";
}

TEST(Course, VerifiedItWouldGoOn) {
  Course course = course_in_force(test::return_rules(), "concussion", "consensus", 25).course;
  course.mild->unverified = false;
  CourseState state = opened(kStart);
  state.begun = true;
  const auto next = std::get<CourseState>(transition(course, state, Check{Symptoms::kMild, false}, By::kPlayer, at(5)));
  EXPECT_EQ(next.since, kStart);
  EXPECT_EQ(next.checked, Checked::kNoWorse);
}

TEST(Course, WorseInStepThreeGoesOneBack) {
  Driven boy("concussion");
  ASSERT_TRUE(boy.begin("daily-life", 0) && boy.well(1) && boy.clear("seen", 2) && boy.begin("easy-aerobic", 24) &&
              boy.well(25) && boy.begin("own-sport", 48));
  ASSERT_TRUE(boy.check(Symptoms::kWorse, 49));
  EXPECT_EQ(boy.key(), "easy-aerobic");
  EXPECT_FALSE(boy.begin("easy-aerobic", 80)) << "nobody has asked again";
  ASSERT_TRUE(boy.check(Symptoms::kNoWorse, 80));
  EXPECT_TRUE(boy.begin("easy-aerobic", 80));
}

TEST(Course, AnotherHurtStartsAnew) {
  Driven boy("concussion");
  boy.to_team_drills();
  ASSERT_TRUE(boy.take(AnotherHurt{}, By::kCoach, 80));
  EXPECT_EQ(boy.state().step, 0);
  EXPECT_EQ(boy.state().open_gates, 0U);
  EXPECT_FALSE(boy.state().begun);
}

TEST(Course, AnybodyMayStepBackNobodyForward) {
  Driven boy("concussion");
  boy.to_team_drills();
  EXPECT_FALSE(boy.take(StepBack{4}, By::kLead, 80));
  EXPECT_TRUE(boy.take(StepBack{1}, By::kCoach, 80));
  EXPECT_EQ(boy.key(), "easy-aerobic");
  EXPECT_FALSE(boy.state().begun);
  EXPECT_FALSE(boy.state().is_open(*boy.course().gate_with("head-impact-risk")));
}

TEST(Course, FourteenDaysForAChildAndForWhatIsNotKnown) {
  for (const auto& [rules, age] : std::vector<std::pair<const char*, std::optional<int>>>{{"symptom-free-14-days", 14},
                                                                                          {"symptom-free-14-days", {}},
                                                                                          {"symptom-free-14-days", 18},
                                                                                          {"", 14},
                                                                                          {"of a league", {}}}) {
    Driven boy("concussion", rules, age);
    boy.to_team_drills();
    ASSERT_TRUE(boy.well(73));
    EXPECT_FALSE(boy.clear("contact", 14 * 24));
    EXPECT_NE(boy.refusal().needed.find("14 days"), std::string::npos);
    EXPECT_TRUE(boy.clear("contact", 14 * 24 + 1));
  }
  Driven adult("concussion", "symptom-free-14-days", 19);
  adult.to_team_drills();
  EXPECT_TRUE(adult.well(73) && adult.clear("contact", 74));
}

TEST(Course, WhatIsNotKnownIsSaid) {
  EXPECT_TRUE(course_in_force(test::return_rules(), "concussion", "consensus", 14).notes.empty());
  const auto unknown = course_in_force(test::return_rules(), "concussion", "of a league", {});
  ASSERT_EQ(unknown.notes.size(), 2U);
  EXPECT_EQ(unknown.notes.front(), "the rules 'of a league' are not known: the strictest that are known hold");
  EXPECT_EQ(unknown.notes.back(), "the age is not known: held as for a child");
}

TEST(Course, WaitingSaysWhatAndUntilWhen) {
  Driven boy("concussion");
  ASSERT_TRUE(boy.begin("daily-life", 0));
  const auto waiting = waiting_at(boy.course(), boy.state());
  ASSERT_TRUE(waiting);
  EXPECT_EQ(waiting->step, 1);
  EXPECT_EQ(waiting->not_before, at(24));
  EXPECT_EQ(waiting->gate, boy.course().gate_with("seen"));
  EXPECT_EQ(waiting->needs,
            (std::vector<std::string>{"a check of symptoms",
                                      "a clinician has seen the player: the clearance of a named clinician"}));
}

TEST(Course, SymptomsAreCountedOnTheCarefulSide) {
  const Course* concussion = test::return_rules().course("concussion");
  EXPECT_EQ(symptoms_of(*concussion, 0, {}), Symptoms::kNoWorse);
  EXPECT_EQ(symptoms_of(*concussion, 2, 59), Symptoms::kMild);
  EXPECT_EQ(symptoms_of(*concussion, 2, 60), Symptoms::kWorse);
  EXPECT_EQ(symptoms_of(*concussion, 3, 5), Symptoms::kWorse);
  EXPECT_EQ(symptoms_of(*concussion, 1, {}), Symptoms::kWorse);
  EXPECT_EQ(symptoms_of(*concussion, {}, 5), Symptoms::kWorse);
  EXPECT_EQ(symptoms_of(*test::return_rules().course("general"), 1, 1), Symptoms::kWorse);
}

TEST(HeartRate, CapsAreRoundedDown) {
  EXPECT_EQ(whole_heart_rate_cap(14, 55), 113);
  EXPECT_EQ(whole_heart_rate_cap(14, 70), 144);
}

}  // namespace
}  // namespace lanework::care
