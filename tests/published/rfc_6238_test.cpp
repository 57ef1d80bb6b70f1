// One-time passwords. RFC 4226 (M'Raihi et al. 2005, doi 10.17487/RFC4226), appendix D; RFC 6238 (M'Raihi et al. 2011,
// doi 10.17487/RFC6238), appendix B, the rows of SHA-1; base32 of RFC 4648 (Josefsson 2006, doi 10.17487/RFC4648),
// section 10. All from memory.
#include <gtest/gtest.h>

#include "app/serve/sign_in/secret.h"
#include "app/serve/sign_in/time_code.h"

namespace lanework::serve {
namespace {

const std::string kSecret = "12345678901234567890";

TEST(Rfc4226, AppendixD) {
  const std::vector<std::string> codes = {"755224", "287082", "359152", "969429", "338314",
                                          "254676", "287922", "162583", "399871", "520489"};
  for (std::size_t i = 0; i < codes.size(); ++i) EXPECT_EQ(counted_code(kSecret, i), codes[i]) << i;
}

TEST(Rfc6238, AppendixB) {
  const std::vector<std::pair<std::int64_t, std::string>> rows = {{59, "94287082"},
                                                                  {1'111'111'109, "07081804"},
                                                                  {1'111'111'111, "14050471"},
                                                                  {1'234'567'890, "89005924"},
                                                                  {2'000'000'000, "69279037"},
                                                                  {20'000'000'000, "65353130"}};
  for (const auto& [seconds, code] : rows) {
    EXPECT_EQ(counted_code(kSecret, static_cast<std::uint64_t>(seconds / kTimeStepSeconds), 8), code) << seconds;
    EXPECT_EQ(step_of_code(kSecret, code.substr(2), seconds), seconds / kTimeStepSeconds);
  }
}

TEST(Rfc4648, Base32OfSection10WithoutPadding) {
  const std::vector<std::pair<std::string, std::string>> rows = {{"", ""},
                                                                 {"f", "MY"},
                                                                 {"fo", "MZXQ"},
                                                                 {"foo", "MZXW6"},
                                                                 {"foob", "MZXW6YQ"},
                                                                 {"fooba", "MZXW6YTB"},
                                                                 {"foobar", "MZXW6YTBOI"}};
  for (const auto& [bytes, text] : rows) {
    EXPECT_EQ(base32(bytes), text);
    EXPECT_EQ(from_base32(text), bytes);
  }
}

}  // namespace
}  // namespace lanework::serve
