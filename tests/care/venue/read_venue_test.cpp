#include "core/care/venue/read_venue.h"

#include <gtest/gtest.h>

#include "tests/care/comma_sheet.h"

namespace lanework::care {
namespace {

Result<VenuePlan> read(const std::string& text) { return read_venue(parse_toml("venue.toml", text).value()); }

TEST(ReadVenue, WhatIsThereIsKnownAndTheRestIsNot) {
  const auto plan = read("name = \"Millrace\"\nlast_rehearsal = 2026-09-05\n[roles]\ncalls = \"the second coach\"\n");
  ASSERT_TRUE(plan);
  EXPECT_EQ(plan.value().name, "Millrace");
  EXPECT_EQ(plan.value().calls, "the second coach");
  EXPECT_EQ(plan.value().last_rehearsal, test::day("2026-09-05"));
  EXPECT_TRUE(plan.value().address.empty());
  EXPECT_FALSE(plan.value().last_review);
}

TEST(ReadVenue, EveryFaultIsTold) {
  const auto plan =
      read("name = \"M\"\naddress = 7\nmap = \"two\\nlines\"\nlast_review = \"soon\"\nphone = \"x\"\nway_in = \"" +
           std::string(121, 'x') + "\"\n[roles]\nrescues = \"me\"\n");
  ASSERT_FALSE(plan);
  const std::string lines = test::lines_of(plan.faults());
  for (const char* said :
       {"venue.toml:2:1: address: found 7", "venue.toml:3:1: map: found 'two\\x0Alines', expected text of one line",
        "last_review", "phone", "way_in: found 121 letters, expected at most 120", "roles.rescues"}) {
    EXPECT_NE(lines.find(said), std::string::npos) << said << "\n" << lines;
  }
  EXPECT_EQ(plan.faults().size(), 6U);
}

TEST(ReadVenue, WithoutANameItIsNone) {
  const auto plan = read("address = \"Millrace Lane 9\"\n");
  ASSERT_FALSE(plan);
  EXPECT_NE(test::lines_of(plan.faults()).find("name: found nothing"), std::string::npos);
}

}  // namespace
}  // namespace lanework::care
