// Time loss counted by the consensus of 2020: Bahr R, Clarsen B, Derman W et al., Br J Sports Med 54:372-389, doi
// 10.1136/bjsports-2019-101969, table 10, its six cases in our own words. The bands are from memory.
#include <gtest/gtest.h>

#include <array>

#include "core/evidence/time_loss.h"

namespace lanework::evidence {
namespace {

// The week of Monday 7 September 2026.
Date day(int of_september) { return *make_date(2026, 9, of_september); }
constexpr int kMonday = 7;
const Date kReport = *make_date(2026, 12, 31);

int days(const Absence& absence) {
  const DaysLost lost = days_lost(absence, kReport);
  EXPECT_FALSE(lost.open);
  return lost.days;
}

TEST(Bahr2020, OffInAMatchAndBackTheSameDay) { EXPECT_EQ(days({day(kMonday), day(kMonday), {}}), 0); }

TEST(Bahr2020, TrainingBrokenOffNormalTheNextDay) { EXPECT_EQ(days({day(kMonday), day(kMonday + 1), {}}), 0); }

TEST(Bahr2020, HurtOnMondayBackOnTheMondayAfter) { EXPECT_EQ(days({day(kMonday), day(kMonday + 7), {}}), 6); }

// Hurt on Saturday, unable on Sunday and Monday, could have trained on Tuesday, though the next session is on Thursday.
TEST(Bahr2020, AbilityCountsNotTheTimetable) { EXPECT_EQ(days({day(kMonday + 5), day(kMonday + 8), {}}), 2); }

// Hurt on Sunday, trains on Monday and Tuesday, cannot from Wednesday on, back on Sunday.
TEST(Bahr2020, LossThatComesLater) { EXPECT_EQ(days({day(kMonday + 2), day(kMonday + 6), {}}), 3); }

// In full on Monday, Tuesday and Thursday; misses Wednesday and Friday.
TEST(Bahr2020, LossThatComesAndGoes) {
  EXPECT_EQ(days({day(kMonday), day(kMonday + 5), {day(kMonday + 2), day(kMonday + 4)}}), 2);
}

// Not of the table: what is not over is told as such, and its days are those so far.
TEST(Bahr2020, OpenInjuriesCountSoFar) {
  EXPECT_EQ(days_lost({day(kMonday), std::nullopt, {}}, day(kMonday + 10)), (DaysLost{10, true}));
  EXPECT_EQ(days_lost({day(kMonday), day(kMonday + 20), {}}, day(kMonday + 10)), (DaysLost{10, true}));
  EXPECT_EQ(days_lost({day(kMonday), day(kMonday + 11), {}}, day(kMonday + 11)), (DaysLost{10, false}));
}

TEST(Bahr2020, BandsOfTimeLoss) {
  using enum SeverityBand;
  constexpr std::array<std::pair<int, SeverityBand>, 6> kBands = {
      {{0, kNone}, {1, kToAWeek}, {7, kToAWeek}, {8, kToFourWeeks}, {28, kToFourWeeks}, {29, kLonger}}};
  for (const auto& [count, band] : kBands) EXPECT_EQ(severity_band(count), band) << count;
}

}  // namespace
}  // namespace lanework::evidence
