// The canonical form of JSON: RFC 8785 (Rundgren, Jordan, Erdtman 2020, doi 10.17487/RFC8785). The numbers are those of
// its appendix B, recalled, and each made again by an ECMAScript engine (String of the double with these bits); the
// order of keys is its example in 3.2.3.
#include <gtest/gtest.h>

#include <bit>

#include "core/ledger/canonical.h"

namespace lanework::ledger {
namespace {

TEST(Rfc8785, NumbersOfItsAppendix) {
  struct Row {
    std::uint64_t bits;
    const char* text;
  };
  const Row rows[] = {{0x0000000000000000ULL, "0"},
                      {0x8000000000000000ULL, "0"},
                      {0x0000000000000001ULL, "5e-324"},
                      {0x8000000000000001ULL, "-5e-324"},
                      {0x7fefffffffffffffULL, "1.7976931348623157e+308"},
                      {0x4340000000000000ULL, "9007199254740992"},
                      {0xc340000000000000ULL, "-9007199254740992"},
                      {0x4430000000000000ULL, "295147905179352830000"},
                      {0x44b52d02c7e14af5ULL, "9.999999999999997e+22"},
                      {0x44b52d02c7e14af6ULL, "1e+23"},
                      {0x44b52d02c7e14af7ULL, "1.0000000000000001e+23"},
                      {0x444b1ae4d6e2ef4eULL, "999999999999999700000"},
                      {0x444b1ae4d6e2ef4fULL, "999999999999999900000"},
                      {0x444b1ae4d6e2ef50ULL, "1e+21"},
                      {0x3eb0c6f7a0b5ed8cULL, "9.999999999999997e-7"},
                      {0x3eb0c6f7a0b5ed8dULL, "0.000001"},
                      {0x41b3de4355555553ULL, "333333333.3333332"},
                      {0x41b3de4355555554ULL, "333333333.33333325"},
                      {0x41b3de4355555555ULL, "333333333.3333333"},
                      {0x41b3de4355555556ULL, "333333333.3333334"},
                      {0x41b3de4355555557ULL, "333333333.33333343"},
                      {0xbecbf647612f3696ULL, "-0.0000033333333333333333"},
                      {0x43143ff3c1cb0959ULL, "1424953923781206.2"}};
  for (const Row& row : rows) EXPECT_EQ(number_text(std::bit_cast<double>(row.bits)), row.text) << row.text;
}

TEST(Rfc8785, WhatIsNoNumberHasNoForm) {
  for (const std::uint64_t bits : {0x7ff8000000000000ULL, 0x7ff0000000000000ULL, 0xfff0000000000000ULL}) {
    EXPECT_FALSE(canonical_json(Node::make_real(std::bit_cast<double>(bits))));
  }
}

TEST(Rfc8785, KeysStandInTheOrderOfTheirUtf16) {
  const auto read = parse_json("sample", R"({"\u20ac": "Euro Sign", "\r": "Carriage Return", "\ufb33":
    "Hebrew Letter Dalet With Dagesh", "1": "One", "\ud83d\ude00": "Emoji: Grinning Face", "\u0080": "Control",
    "\u00f6": "Latin Small Letter O With Diaeresis"})");
  ASSERT_TRUE(read);
  const auto text = canonical_json(read.value().root);
  ASSERT_TRUE(text);
  std::size_t last = 0;
  for (const char* value : {"Carriage Return", "One", "Control", "Latin Small", "Euro Sign", "Emoji", "Hebrew"}) {
    const std::size_t at = text->find(value);
    ASSERT_NE(at, std::string::npos) << value;
    EXPECT_GE(at, last) << value;
    last = at;
  }
}

// 3.2.2 of it: what is escaped, what is not, and no blanks.
TEST(Rfc8785, TextsAndLiterals) {
  const auto read =
      parse_json("sample", R"({"numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
    "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/", "literals": [true, false]})");
  ASSERT_TRUE(read);
  EXPECT_EQ(canonical_json(read.value().root).value_or(""),
            "{\"literals\":[true,false],\"numbers\":[333333333.3333333,1e+30,4.5,0.002,1e-27],\"string\":"
            "\"\u20ac$\\u000f\\nA'B\\\"\\\\\\\\\\\"/\"}");
}

}  // namespace
}  // namespace lanework::ledger
