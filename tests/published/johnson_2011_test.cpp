// Johnson, Salzberg, Stevenson 2011, J Strength Cond Res 25(9): children of 5-14 start with 50-60 jumps a
// session, twice a week. The warm-up may use a share of that, never more.
#include <gtest/gtest.h>

#include "tests/catalogue/shipped.h"

namespace lanework::catalogue {
namespace {

constexpr int kStartingJumpsFrom = 50;
constexpr int kStartingJumpsTo = 60;
constexpr int kSessionsAWeek = 2;

TEST(Johnson2011, CeilingsOfChildrenStayWithinTheStartingVolume) {
  const Document limits = test::read_toml(test::shipped_folder() / "limits.toml");
  const std::int64_t share = limits.root.find("warm_up_share_percent")->integer;
  for (int age = 8; age <= 11; ++age) {
    const Ceilings& ceilings = test::shipped_catalogue().ceilings_for(age);
    EXPECT_GE(ceilings.contacts_session, kStartingJumpsFrom * share / 100) << age;
    EXPECT_LE(ceilings.contacts_session, kStartingJumpsTo * share / 100) << age;
    EXPECT_LE(ceilings.contacts_week, kSessionsAWeek * kStartingJumpsTo * share / 100) << age;
  }
}

}  // namespace
}  // namespace lanework::catalogue
