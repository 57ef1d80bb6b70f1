#include "core/care/incident/read_incident.h"

#include <gtest/gtest.h>

#include "tests/care/comma_sheet.h"

namespace lanework::care {
namespace {

const Date kDay = test::day("2026-11-26");

Result<Incident> read(const std::string& text) {
  return read_incident(parse_toml("incident.toml", text).value(), kDay);
}

std::string faults_of(const std::string& text) {
  const auto incident = read(text);
  return incident ? "" : test::lines_of(incident.faults());
}

TEST(ReadIncident, PlayerAndDayAreEnough) {
  const auto incident = read("player = \"Q06\"\ndate = 2026-11-24\n");
  ASSERT_TRUE(incident);
  EXPECT_EQ(incident.value().player, "Q06");
  EXPECT_FALSE(incident.value().time);
  EXPECT_TRUE(incident.value().what_happened.empty());
  EXPECT_TRUE(incident.value().told.empty());
}

TEST(ReadIncident, KeepsWordsAsTheyAre) {
  const auto incident = read(
      "player = \"Q06\"\ndate = 2026-11-24\ntime = 18:12:00\nwhat_happened = \"Slipped.\"\nsigns = [\"a\", \"b\"]\n"
      "[[told]]\nwho = \"the mother\"\nat = 18:25:00\n");
  ASSERT_TRUE(incident);
  EXPECT_EQ(incident.value().what_happened, "Slipped.");
  EXPECT_EQ(incident.value().signs, (std::vector<std::string>{"a", "b"}));
  ASSERT_EQ(incident.value().told.size(), 1U);
  EXPECT_EQ(incident.value().told[0].who, "the mother");
  EXPECT_EQ(to_text(*incident.value().told[0].at), "18:25");
}

TEST(ReadIncident, EveryFaultIsTold) {
  EXPECT_EQ(faults_of("place = \"pitch\"\n"),
            "incident.toml:1:1: player: found nothing, expected text\n"
            "incident.toml:1:1: date: found nothing, expected the day it happened, such as 2026-11-26\n");
  EXPECT_NE(faults_of("player = \"Q06\"\ndate = 2026-11-27\n").find("date: found 2026-11-27, expected a day not after"),
            std::string::npos);
  EXPECT_NE(
      faults_of("player = \"Q06\"\ndate = 2026-11-24\nreported_on = 2026-11-23\n").find("not before the incident"),
      std::string::npos);
  EXPECT_NE(faults_of("player = \"Q06\"\ndate = 2026-11-24\nplace = \"" + std::string(201, 'x') + "\"\n")
                .find("place: found 201 letters, expected at most 200"),
            std::string::npos);
  EXPECT_NE(faults_of("player = \"Q06\"\ndate = 2026-11-24\ndiagnosis = \"x\"\n").find("diagnosis"), std::string::npos);
}

TEST(ReadIncident, NoFaultQuotesWhatWasToldOfAPlayer) {
  const std::string faults =
      faults_of("player = \"Q06\"\ndate = \"when he fainted\"\nsigns = \"he fainted\"\nplace = \"he\\nfainted\"\n");
  EXPECT_FALSE(faults.empty());
  EXPECT_EQ(faults.find("fainted"), std::string::npos) << faults;
}

}  // namespace
}  // namespace lanework::care
