#include "core/care/pain/judge_pain.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include "core/people/instruction.h"
#include "tests/care/shipped_rules.h"

namespace lanework::care {
namespace {

using catalogue::BodyArea;
using people::TakingPart;

const Date kThursday = *make_date(2026, 11, 26);

PainReport knee(std::optional<int> before, std::optional<int> during = {}, std::optional<int> next_morning = {}) {
  PainReport out;
  out.day = kThursday;
  out.before = before;
  out.during = during;
  out.next_morning = next_morning;
  out.place = BodyArea::kKnee;
  return out;
}

PainReport days_before(PainReport report, int days) {
  report.day = Date{kThursday.days_since_epoch - days};
  return report;
}

TakingPart answer(const std::vector<PainReport>& reports) { return judge_pain(test::pain_rule(), reports).taking_part; }

TEST(Pain, TheNumberDecides) {
  for (int number = 0; number <= kMostPain; ++number) {
    const TakingPart wanted = number <= 2   ? TakingPart::kJoinsIn
                              : number == 3 ? TakingPart::kJoinsInWithSwaps
                                            : TakingPart::kSitsOut;
    EXPECT_EQ(answer({knee(number)}), wanted) << number;
    EXPECT_EQ(answer({knee(0, number)}), wanted) << number;
  }
}

TEST(Pain, NotSettledTheNextMorningIsSeenByAClinician) {
  EXPECT_EQ(answer({knee(1, 2, 0)}), TakingPart::kJoinsIn);
  EXPECT_EQ(answer({knee(1, 2, 1)}), TakingPart::kSitsOut);
}

TEST(Pain, HeadNeckAndChestAreNeverJudgedByANumber) {
  for (const BodyArea place : {BodyArea::kHead, BodyArea::kNeck, BodyArea::kChest}) {
    PainReport report = knee(0);
    report.place = place;
    const PainJudgement judged = judge_pain(test::pain_rule(), {report});
    EXPECT_EQ(judged.taking_part, TakingPart::kSitsOut);
    EXPECT_TRUE(judged.at_once);
  }
}

TEST(Pain, EverySignIsSeenByAClinicianWhateverTheNumber) {
  for (std::size_t i = 0; i < kPainSigns; ++i) {
    PainReport report = knee(0);
    report.signs = {static_cast<PainSign>(i)};
    const PainJudgement judged = judge_pain(test::pain_rule(), {report});
    EXPECT_EQ(judged.taking_part, TakingPart::kSitsOut);
    EXPECT_EQ(judged.at_once, report.signs.front() != PainSign::kLimp && report.signs.front() != PainSign::kNightPain);
  }
}

TEST(Pain, WhatIsNotKnownTakesTheCarefulSideAndSaysSo) {
  const PainJudgement no_number = judge_pain(test::pain_rule(), {knee({})});
  EXPECT_EQ(no_number.taking_part, TakingPart::kSitsOut);
  EXPECT_EQ(no_number.not_known, std::vector<std::string>{"any number"});
  PainReport nowhere = knee(1);
  nowhere.place.reset();
  const PainJudgement no_place = judge_pain(test::pain_rule(), {nowhere});
  EXPECT_EQ(no_place.taking_part, TakingPart::kSitsOut);
  EXPECT_EQ(no_place.not_known, (std::vector<std::string>{"the place", "the next morning"}));
  nowhere.before = 0;
  EXPECT_EQ(answer({nowhere}), TakingPart::kJoinsIn) << "nothing hurts, so there is no place";
  EXPECT_EQ(answer({}), TakingPart::kJoinsIn);
}

TEST(Pain, WorseThanTheWeekBeforeIsOneAnswerMoreCareful) {
  EXPECT_EQ(answer({days_before(knee(1), 7), knee(1)}), TakingPart::kJoinsIn);
  EXPECT_EQ(answer({days_before(knee(1), 7), knee(2)}), TakingPart::kJoinsInWithSwaps);
  EXPECT_EQ(answer({days_before(knee(2), 7), knee(3)}), TakingPart::kSitsOut);
  EXPECT_EQ(answer({days_before(knee(1), 2), knee(2)}), TakingPart::kJoinsIn) << "no week apart";
  EXPECT_EQ(answer({days_before(knee(1), 30), knee(2)}), TakingPart::kJoinsIn) << "not the week before";
}

TEST(Pain, SwapsHoldBackThePlaceAndNothingElse) {
  const PainJudgement judged = judge_pain(test::pain_rule(), {knee(3)});
  ASSERT_TRUE(judged.restriction);
  EXPECT_EQ(judged.restriction->areas, std::vector<BodyArea>{BodyArea::kKnee});
  EXPECT_TRUE(judged.restriction->kinds.empty());
  EXPECT_EQ(judged.restriction->allowed_grade, 1);
  EXPECT_FALSE(judged.restriction->sits_out);
  EXPECT_FALSE(judged.restriction->until) << "it holds until the lead lifts it";
  EXPECT_EQ(judged.restriction->review, (Date{kThursday.days_since_epoch + 1}));
  EXPECT_EQ(people::private_word_in(people::instruction_for(*judged.restriction)), "");
  EXPECT_FALSE(judge_pain(test::pain_rule(), {knee(2)}).restriction);
  EXPECT_TRUE(judge_pain(test::pain_rule(), {knee(4)}).restriction->sits_out);
}

// ---- properties ----------------------------------------------------------------------------------------------------

std::optional<int> any_number() {
  const int number = *rc::gen::inRange(-3, kMostPain + 1);
  if (number < 0) return {};
  return number;
}

PainReport any_report() {
  PainReport out;
  if (*rc::gen::inRange(0, 5) > 0) out.day = Date{kThursday.days_since_epoch - *rc::gen::inRange(0, 21)};
  out.before = any_number();
  out.during = any_number();
  out.next_morning = any_number();
  if (*rc::gen::inRange(0, 5) > 0) out.place = static_cast<BodyArea>(*rc::gen::inRange(0, 14));
  if (*rc::gen::inRange(0, 5) == 0)
    out.signs.push_back(static_cast<PainSign>(*rc::gen::inRange(0, static_cast<int>(kPainSigns))));
  return out;
}

std::vector<PainReport> any_reports(int most) {
  std::vector<PainReport> out;
  const int count = *rc::gen::inRange(0, most + 1);
  for (int i = 0; i < count; ++i) out.push_back(any_report());
  return out;
}

TEST(PainProperty, AnotherReportNeverGivesALessCarefulAnswer) {
  EXPECT_TRUE(rc::check([] {
    std::vector<PainReport> reports = any_reports(5);
    const TakingPart before = answer(reports);
    reports.insert(reports.begin() + *rc::gen::inRange(0, static_cast<int>(reports.size()) + 1), any_report());
    RC_ASSERT(answer(reports) >= before);
  }));
}

TEST(PainProperty, AnotherSignNeverGivesALessCarefulAnswer) {
  EXPECT_TRUE(rc::check([] {
    std::vector<PainReport> reports = any_reports(4);
    reports.push_back(any_report());
    const TakingPart before = answer(reports);
    const auto which = static_cast<std::size_t>(*rc::gen::inRange(0, static_cast<int>(reports.size())));
    reports[which].signs.push_back(static_cast<PainSign>(*rc::gen::inRange(0, static_cast<int>(kPainSigns))));
    RC_ASSERT(answer(reports) >= before);
  }));
}

// Of the newest report: a higher number long ago may be what makes today's no worse.
TEST(PainProperty, MorePainNowNeverGivesALessCarefulAnswer) {
  EXPECT_TRUE(rc::check([] {
    std::vector<PainReport> reports = any_reports(4);
    PainReport newest = any_report();
    newest.day = Date{kThursday.days_since_epoch + 1};
    reports.push_back(newest);
    const TakingPart before = answer(reports);
    for (std::optional<int>* number : {&reports.back().before, &reports.back().during, &reports.back().next_morning}) {
      if (*number) *number = std::min(kMostPain, **number + *rc::gen::inRange(0, 4));
    }
    RC_ASSERT(answer(reports) >= before);
  }));
}

TEST(PainProperty, OrderDecidesNothing) {
  EXPECT_TRUE(rc::check([] {
    std::vector<PainReport> reports = any_reports(5);
    const TakingPart before = answer(reports);
    std::reverse(reports.begin(), reports.end());
    RC_ASSERT(answer(reports) == before);
  }));
}

TEST(PainProperty, ForgettingANumberOrThePlaceNeverGivesALessCarefulAnswer) {
  EXPECT_TRUE(rc::check([] {
    PainReport report = any_report();
    const TakingPart before = answer({report});
    if (*rc::gen::arbitrary<bool>())
      report.place.reset();
    else
      report.before = report.during = report.next_morning = std::nullopt;
    const bool harmless = !report.place && report.number() == 0 && report.signs.empty();
    RC_PRE(!harmless);
    RC_ASSERT(answer({report}) >= before);
  }));
}

}  // namespace
}  // namespace lanework::care
