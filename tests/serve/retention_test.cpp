#include "app/serve/retention.h"

#include <gtest/gtest.h>

#include "tests/serve/house_of_test.h"

namespace lanework::serve {
namespace {

TEST(Retention, GoesByTheClockAndDoneTwiceDoesNothingMore) {
  test::HouseOfTest house;
  const std::string coach = house.account(ledger::Role::kCoach);
  static_cast<void>(house.session(coach));
  static_cast<void>(house.device(coach));  // its link was confirmed
  ASSERT_TRUE(house.room().gate->note_failure("address/192.0.2.1", house.now));
  const store::Batch odd{
      {"d-1", coach, ledger::Role::kCoach, false}, {}, {{"{}", "id: expected a UUID"}}, now_at(house.now).stamp};
  ASSERT_TRUE(house.room().store->take_in(std::vector<store::Batch>{odd}, house.house().kinds));

  const auto at_once = forget_what_is_past(house.room(), now_at(house.now));
  ASSERT_TRUE(at_once);
  EXPECT_EQ(at_once.value().of_signing_in + at_once.value().kept_aside, 0);

  const auto two_days_on = forget_what_is_past(house.room(), now_at(house.now + 2 * 86'400));
  ASSERT_TRUE(two_days_on);
  EXPECT_EQ(two_days_on.value().of_signing_in, 3) << "a session, a link, a failure";
  EXPECT_EQ(two_days_on.value().kept_aside, 0);
  EXPECT_EQ(house.room().gate->devices().value().size(), 1U) << "the device stays paired";

  const auto later = forget_what_is_past(house.room(), now_at(house.now + 32 * 86'400));
  ASSERT_TRUE(later);
  EXPECT_EQ(later.value().kept_aside, 1);
  const auto again = forget_what_is_past(house.room(), now_at(house.now + 32 * 86'400));
  ASSERT_TRUE(again);
  EXPECT_EQ(again.value().of_signing_in + again.value().kept_aside, 0);
}

TEST(Retention, TheCaretakerLooksAtOnceAndEndsWhenItIsTold) {
  test::HouseOfTest house;
  static_cast<void>(house.session(house.account(ledger::Role::kCoach)));
  house.now += 2 * 86'400;
  { const Caretaker caretaker(house.house()); }
  ASSERT_EQ(house.log().size(), 1U);
  EXPECT_NE(house.log()[0].find("\"forgotten\""), std::string::npos) << house.log()[0];
}

}  // namespace
}  // namespace lanework::serve
