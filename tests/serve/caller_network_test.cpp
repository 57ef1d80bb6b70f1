#include "app/serve/sign_in/caller_network.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <array>
#include <cstdio>

namespace lanework::serve {
namespace {

using Groups = std::array<unsigned, 8>;

Groups some_groups() {
  Groups out{};
  for (unsigned& group : out) group = *rc::gen::inRange(0U, 0x10000U);
  out[0] = 0x2001;  // global unicast, so never one of the prefixes that stand for IPv4
  return out;
}

// RFC 4291, 2.2, form 1: every group, nothing left out.
std::string in_full(const Groups& groups) {
  std::string out;
  for (const unsigned group : groups) {
    std::array<char, 8> text{};
    std::snprintf(text.data(), text.size(), "%s%X", out.empty() ? "" : ":", group);
    out += text.data();
  }
  return out;
}

// RFC 4291, 2.2: each address in its three forms; RFC 5952, 1 and 4: one form for all of them.
TEST(CallerNetwork, OneAddressWrittenInManyWaysIsOneNetwork) {
  for (const char* form : {"2001:DB8:0:0:8:800:200C:417A", "2001:DB8::8:800:200C:417A", "2001:db8::8:800:200c:417a",
                           "2001:0db8:0000:0000:0008:0800:200c:417a", "2001:db8:0:0::200c:417a", "[2001:db8::1]",
                           "[2001:db8::1]:443", "2001:db8::1%eth0", "2001:db8::", "2001:db8::13.1.68.3"}) {
    EXPECT_EQ(caller_network(form), "2001:db8::/64") << form;
  }
  // RFC 5952, 4.2.2 and 4.2.3: one group of zeros is written out, of two runs the longer goes.
  EXPECT_EQ(caller_network("2001:db8:0:1:1:1:1:1"), "2001:db8:0:1::/64");
  EXPECT_EQ(caller_network("2001:0:0:1:0:0:0:1"), "2001:0:0:1::/64");
}

TEST(CallerNetwork, TheNextNetworkIsAnother) {
  EXPECT_NE(caller_network("2001:db8:0:1::1"), caller_network("2001:db8:0:2::1"));
  EXPECT_EQ(caller_network("fe80::1%eth0"), "fe80::/64");
  EXPECT_EQ(caller_network("::1"), "::/64");
}

// RFC 4291, 2.5.5.2, with its own example; RFC 6052, 2.1 and 2.4.
TEST(CallerNetwork, AnIpv4AddressCountsByItselfHoweverItCame) {
  for (const char* form : {"129.144.52.38", "::FFFF:129.144.52.38", "::ffff:8190:3426", "0:0:0:0:0:FFFF:129.144.52.38",
                           "[::ffff:129.144.52.38]:5000", "129.144.52.38:5000", "64:ff9b::129.144.52.38"}) {
    EXPECT_EQ(caller_network(form), "129.144.52.38") << form;
  }
  EXPECT_NE(caller_network("::ffff:192.0.2.1"), caller_network("::ffff:192.0.2.2"));
  // 2.5.5.1: the 'compatible' ones are deprecated, and nobody's.
  EXPECT_EQ(caller_network("::13.1.68.3"), "::/64");
}

TEST(CallerNetwork, WhatIsNoAddressIsLeftAsItIs) {
  for (const char* other : {"", "unknown", "_hidden", "2001:db8:::1", "1.2.3", "1.2.3.4.5", "12001:db8::1"}) {
    EXPECT_EQ(caller_network(other), other);
  }
}

RC_GTEST_PROP(CallerNetwork, TheLastHalfNeverCountsAndTheFirstAlwaysDoes, ()) {
  const Groups one = some_groups();
  Groups neighbour = some_groups();
  std::copy(one.begin(), one.begin() + 4, neighbour.begin());
  RC_ASSERT(caller_network(in_full(one)) == caller_network(in_full(neighbour)));
  neighbour[*rc::gen::inRange<std::size_t>(1, 4)] ^= *rc::gen::inRange(1U, 0x10000U);
  RC_ASSERT(caller_network(in_full(one)) != caller_network(in_full(neighbour)));
}

}  // namespace
}  // namespace lanework::serve
