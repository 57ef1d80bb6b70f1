// Thomee R 1997, Phys Ther 77:1690-703; Silbernagel KG, Thomee R, Eriksson BI, Karlsson J 2007, Am J Sports Med
// 35:897-906, doi 10.1177/0363546506298279. The cuts are from memory and reprints disagree (0-2, 3-5, above 5; 0-3,
// 4-5, above 5): for a child the rule is as careful as the most careful of them, and never looser.
#include <gtest/gtest.h>

#include "core/care/pain/judge_pain.h"
#include "tests/care/shipped_rules.h"

namespace lanework::care {
namespace {

TEST(Silbernagel2007, NoAnswerIsLooserThanAnyReprint) {
  for (int number = 0; number <= kMostPain; ++number) {
    PainReport report;
    report.place = catalogue::BodyArea::kLowerLeg;
    report.during = number;
    report.next_morning = 0;
    const auto answer = judge_pain(test::pain_rule(), {report}).taking_part;
    for (const PublishedCuts& cuts : test::pain_rule().published) {
      if (number > cuts.unchanged_up_to) {
        EXPECT_GE(answer, people::TakingPart::kJoinsInWithSwaps) << cuts.key << number;
      }
      if (cuts.goes_on_up_to && number > *cuts.goes_on_up_to) {
        EXPECT_EQ(answer, people::TakingPart::kSitsOut) << cuts.key;
      }
    }
  }
}

TEST(Silbernagel2007, RecalledCutsAreMarkedAndSourcesToo) {
  for (const PublishedCuts& cuts : test::pain_rule().published) {
    if (cuts.key == "adult-tendon") {
      EXPECT_TRUE(cuts.unverified);
    }
  }
  for (const catalogue::Source& source : catalogue::test::shipped_catalogue().sources) {
    if (source.key == "thomee-1997" || source.key == "silbernagel-2007") {
      EXPECT_TRUE(source.unverified);
    }
  }
}

// It settles by the next morning, and does not grow from week to week.
TEST(Silbernagel2007, WhatDoesNotSettleOrGrowsIsHeldBack) {
  PainReport report;
  report.place = catalogue::BodyArea::kLowerLeg;
  report.day = Date{20000};
  report.before = 2;
  report.next_morning = 2;
  EXPECT_EQ(judge_pain(test::pain_rule(), {report}).taking_part, people::TakingPart::kSitsOut);
  report.next_morning = 0;
  PainReport week_before = report;
  week_before.day = Date{19993};
  week_before.before = 1;
  EXPECT_EQ(judge_pain(test::pain_rule(), {week_before, report}).taking_part, people::TakingPart::kJoinsInWithSwaps);
}

}  // namespace
}  // namespace lanework::care
