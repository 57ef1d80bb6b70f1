// UUIDs: RFC 9562 (Davis, Peabody, Leach 2024, doi 10.17487/RFC9562), the example of version 7 in its appendix A.6; the
// values were recalled, and agree with each other: the time is 22 February 2022, 14:22:22 at UTC-5.
#include <gtest/gtest.h>

#include "core/ledger/entry_id.h"

namespace lanework::ledger {
namespace {

TEST(Rfc9562, TheExampleOfVersionSeven) {
  constexpr std::uint64_t kMilliseconds = 1'645'557'742'000;
  const std::string text = "017f22e2-79b0-7cc3-98c4-dc0c0c07398f";
  const auto id = parse_entry_id("017F22E2-79B0-7CC3-98C4-DC0C0C07398F");
  ASSERT_TRUE(id);
  EXPECT_EQ(to_text(*id), text);
  EXPECT_EQ(milliseconds_of(*id), kMilliseconds);
  const std::array<std::uint8_t, 10> random = {0x0c, 0xc3, 0x18, 0xc4, 0xdc, 0x0c, 0x0c, 0x07, 0x39, 0x8f};
  EXPECT_EQ(to_text(make_entry_id(kMilliseconds, random)), text);
}

// Its appendix A has examples of the other versions: none of them is an id of ours. The two special ones neither.
TEST(Rfc9562, OtherVersionsAreNone) {
  for (const char* other : {"C232AB00-9414-11EC-B3C8-9F6BDECED846", "5df41881-3aed-3515-88a7-2f4a814cf09e",
                            "919108f7-52d1-4320-9bac-f847db4148a8", "2ed6657d-e927-568b-95e1-2665a8aea6a2",
                            "1EC9414C-232A-6B00-B3C8-9F6BDECED846", "2489E9AD-2EE2-8E00-8EC9-32D5F69181C0",
                            "00000000-0000-0000-0000-000000000000", "ffffffff-ffff-ffff-ffff-ffffffffffff",
                            "017f22e2-79b0-7cc3-18c4-dc0c0c07398f"}) {
    EXPECT_FALSE(parse_entry_id(other)) << other;
  }
}

}  // namespace
}  // namespace lanework::ledger
