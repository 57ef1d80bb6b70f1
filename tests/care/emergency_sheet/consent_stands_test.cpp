#include <gtest/gtest.h>
#include <rapidcheck.h>

#include "core/care/emergency_sheet/emergency_contact.h"
#include "tests/care/comma_sheet.h"

namespace lanework::care {
namespace {

const Date kDay = test::day("2026-11-26");

bool stands(const char* given, const char* withdrawn, std::optional<Date> born = {}) {
  return consent_stands({parse_iso_date(given), parse_iso_date(withdrawn)}, born, kDay);
}

TEST(ConsentStands, GivenByTheDayAndNotTakenBack) {
  EXPECT_TRUE(stands("2026-11-26", ""));
  EXPECT_FALSE(stands("", ""));
  EXPECT_FALSE(stands("2026-11-27", ""));
  EXPECT_FALSE(stands("2026-08-30", "2026-10-12"));
  EXPECT_FALSE(stands("2026-08-30", "2026-08-30"));
  EXPECT_FALSE(stands("2026-08-30", "2026-12-24")) << "a withdrawal takes away at once";
  EXPECT_TRUE(stands("2026-10-13", "2026-10-12")) << "given anew";
}

TEST(ConsentStands, From18OnThePlayersOwn) {
  const Date born = test::day("2008-11-01");
  EXPECT_FALSE(stands("2026-08-30", "", born));
  EXPECT_TRUE(stands("2026-11-02", "", born));
}

// Whatever the dates: a withdrawal never gives, and a day without consent is never one with it.
TEST(ConsentStands, AWithdrawalNeverGives) {
  EXPECT_TRUE(rc::check([] {
    const Date day{*rc::gen::inRange(0, 1000)};
    const EmergencyConsent consent{Date{*rc::gen::inRange(0, 1000)}, Date{*rc::gen::inRange(0, 1000)}};
    const bool without = consent_stands({consent.given, {}}, {}, day);
    RC_ASSERT(!consent_stands(consent, {}, day) || without);
    RC_ASSERT(!consent_stands({{}, consent.withdrawn}, {}, day));
  }));
}

}  // namespace
}  // namespace lanework::care
