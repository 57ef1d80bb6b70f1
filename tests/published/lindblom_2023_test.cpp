// Lindblom H, Sonesson S, Torvaldsson K, Waldén M, Hägglund M 2023, Br J Sports Med 57:83-90, doi
// 10.1136/bjsports-2022-105890: an easier variant at pain above 3 of 10.
#include <gtest/gtest.h>

#include <algorithm>

#include "core/care/pain/judge_pain.h"
#include "tests/care/shipped_rules.h"

namespace lanework::care {
namespace {

TEST(Lindblom2023, NobodyGoesOnUnchangedAboveThree) {
  for (int number = 0; number <= kMostPain; ++number) {
    PainReport report;
    report.place = catalogue::BodyArea::kHipAndGroin;
    report.during = number;
    const auto answer = judge_pain(test::pain_rule(), {report}).taking_part;
    if (number > 3) {
      EXPECT_NE(answer, people::TakingPart::kJoinsIn) << number;
    }
  }
}

TEST(Lindblom2023, ItsCutIsShownAsRead) {
  const auto& published = test::pain_rule().published;
  const auto row = std::find_if(published.begin(), published.end(),
                                [](const PublishedCuts& cuts) { return cuts.key == "youth-trial"; });
  ASSERT_NE(row, published.end());
  EXPECT_EQ(row->unchanged_up_to, 3);
  EXPECT_FALSE(row->unverified);
}

}  // namespace
}  // namespace lanework::care
