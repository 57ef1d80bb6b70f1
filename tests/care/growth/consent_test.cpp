#include "core/care/growth/consent.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include "tests/care/growth/a_player.h"

namespace lanework::care::growth {
namespace {

using test::day;

const Date kToday = day("2026-11-26");
const Date kBorn = day("2013-11-26");

AgreementState state(std::optional<Date> consent, std::optional<Date> assent, std::optional<Date> withdrawn = {}) {
  return agreement_state({consent, assent, withdrawn}, kBorn, kToday);
}

TEST(Agreement, OffUntilBothAreRecorded) {
  const Date before = day("2026-09-01");
  EXPECT_EQ(state({}, {}), AgreementState::kNeitherGiven);
  EXPECT_EQ(state(before, {}), AgreementState::kNoAssent);
  EXPECT_EQ(state({}, before), AgreementState::kNoConsent);
  EXPECT_EQ(state(before, before), AgreementState::kOn);
  EXPECT_EQ(state(before, kToday), AgreementState::kOn);
}

TEST(Agreement, OneOfTomorrowGivesNothing) {
  EXPECT_EQ(state(day("2026-09-01"), day("2026-11-27")), AgreementState::kNoAssent);
}

TEST(Agreement, TakenBackIsOffAtOnceAndBothHaveToAgreeAnew) {
  const Date before = day("2026-09-01");
  const Date later = day("2026-11-01");
  EXPECT_EQ(state(before, before, day("2026-10-01")), AgreementState::kWithdrawn);
  EXPECT_EQ(state(before, before, before), AgreementState::kWithdrawn);
  EXPECT_EQ(state(before, before, day("2027-01-01")), AgreementState::kWithdrawn);
  EXPECT_EQ(state(later, before, day("2026-10-01")), AgreementState::kWithdrawn);
  EXPECT_EQ(state(before, later, day("2026-10-01")), AgreementState::kWithdrawn);
  EXPECT_EQ(state(later, later, day("2026-10-01")), AgreementState::kOn);
}

TEST(Agreement, From18ThePlayersOwnWordIsAsked) {
  const Date born = day("2008-06-01");
  const Agreement as_a_child{day("2025-01-01"), day("2025-01-01"), {}};
  EXPECT_EQ(agreement_state(as_a_child, born, day("2026-05-31")), AgreementState::kOn);
  EXPECT_EQ(agreement_state(as_a_child, born, day("2026-06-01")), AgreementState::kOfAge);
  const Agreement own{{}, day("2026-06-02"), {}};
  EXPECT_EQ(agreement_state(own, born, kToday), AgreementState::kOn);
  EXPECT_EQ(agreed_since(own, born, kToday), day("2026-06-02"));
}

TEST(Agreement, At16ThePlayerIsAskedAgain) {
  const Date born = day("2010-11-01");
  EXPECT_TRUE(should_be_renewed({day("2025-01-01"), day("2025-01-01"), {}}, born, kToday));
  EXPECT_FALSE(should_be_renewed({day("2025-01-01"), day("2026-11-02"), {}}, born, kToday));
  EXPECT_FALSE(should_be_renewed({day("2025-01-01"), day("2025-01-01"), {}}, kBorn, kToday));
}

// Whatever the dates: on means that both were given by the day, and neither lies before or on a withdrawal.
TEST(Agreement, OnMeansBoth) {
  EXPECT_TRUE(rc::check([] {
    const auto a_date = [] {
      return *rc::gen::inRange(0, 4) == 0
                 ? std::optional<Date>()
                 : std::optional<Date>(Date{kToday.days_since_epoch + *rc::gen::inRange(-20, 5)});
    };
    const Agreement agreement{a_date(), a_date(), a_date()};
    const bool on = may_be_shown(agreement, kBorn, kToday);
    const auto given = [&](std::optional<Date> one) {
      return one && *one <= kToday && (!agreement.withdrawn || *one > *agreement.withdrawn);
    };
    RC_ASSERT(on == (given(agreement.consent) && given(agreement.assent)));
  }));
}

TEST(Agreement, NoWordsOfItHoldANumber) {
  for (const AgreementState one : {AgreementState::kOn, AgreementState::kNeitherGiven, AgreementState::kNoConsent,
                                   AgreementState::kNoAssent, AgreementState::kWithdrawn}) {
    EXPECT_EQ(std::string(in_words(one)).find_first_of("0123456789"), std::string::npos);
  }
}

}  // namespace
}  // namespace lanework::care::growth
