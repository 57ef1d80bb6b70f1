// Bedoya, Miltenberger, Lopez 2015, J Strength Cond Res 29(8): youth football, not beyond 80-120 contacts a
// session, two days a week. From memory.
#include <gtest/gtest.h>

#include "tests/catalogue/shipped.h"

namespace lanework::catalogue {
namespace {

TEST(Bedoya2015, CapsOfTeenagersStandWithinTheRange) {
  const Document limits = test::read_toml(test::shipped_folder() / "limits.toml");
  for (const Node& band : limits.root.find("ceilings")->items) {
    if (band.find("ages")->find("from")->integer < 12) continue;
    const std::int64_t session = band.find("jump_cap_session")->integer;
    EXPECT_GE(session, 80);
    EXPECT_LE(session, 120);
    EXPECT_LE(band.find("jump_cap_week")->integer, 2 * session);
  }
}

}  // namespace
}  // namespace lanework::catalogue
