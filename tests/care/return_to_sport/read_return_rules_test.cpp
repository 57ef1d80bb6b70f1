#include "core/care/return_to_sport/read_return_rules.h"

#include <gtest/gtest.h>

#include <fstream>
#include <iterator>

#include "tests/care/shipped_rules.h"

namespace lanework::care {
namespace {

std::string shipped_text() {
  std::ifstream in(catalogue::test::shipped_folder() / "care" / "return_rules.toml", std::ios::binary);
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

// The first place of the piece exchanged, or the place after 'from'.
std::string with(const std::string& piece, const std::string& by, const std::string& from = "") {
  std::string text = shipped_text();
  const std::size_t start = text.find(from);
  const std::size_t at = text.find(piece, start);
  if (at == std::string::npos) throw std::runtime_error("no " + piece);
  return text.replace(at, piece.size(), by);
}

std::string first_fault(const std::string& text) {
  const auto read =
      read_return_rules(parse_toml("return_rules.toml", text).value(), catalogue::test::shipped_catalogue().sources);
  return read.ok() ? "" : to_line(read.faults().front());
}

TEST(ReadReturnRules, ShippedRulesAreSound) {
  const ReturnRules& rules = test::return_rules();
  ASSERT_EQ(rules.courses.size(), 2U);
  EXPECT_EQ(rules.course("concussion")->steps.size(), 6U);
  EXPECT_EQ(rules.course("general")->steps.size(), 6U);
  EXPECT_EQ(rules.course("other"), nullptr);
}

// What nobody has read is marked so.
TEST(ReadReturnRules, WhatIsRecalledIsMarkedUnverified) {
  const ReturnRules& rules = test::return_rules();
  EXPECT_TRUE(rules.same_day_unverified);
  EXPECT_TRUE(rules.course("concussion")->mild->unverified);
  for (const char* step : {"team-drills", "full-practice", "match"}) {
    const Course& course = *rules.course("concussion");
    EXPECT_TRUE(course.step(*course.step_with(step)).back_to_unverified);
    EXPECT_EQ(course.step(*course.step_with(step)).back_to, *course.step_with("own-sport"));
  }
}

TEST(ReadReturnRules, MistakesAreTold) {
  EXPECT_NE(first_fault(with("gate = \"seen\"", "gate = \"sen\"", "easy-aerobic")).find("step.2.gate: found 'sen'"),
            std::string::npos);
  EXPECT_NE(first_fault(with("back_to = \"daily-life\"", "back_to = \"match\"", "easy-aerobic"))
                .find("this step or one before it"),
            std::string::npos);
  EXPECT_NE(first_fault(with("risk = \"no-impact-risk\"", "risk = \"full\"")).find("no less risk"), std::string::npos);
  EXPECT_NE(first_fault(with("instruction = \"no contact\"", "instruction = \"concussion\""))
                .find("without what is the matter"),
            std::string::npos);
  EXPECT_NE(first_fault(with("waiting = \"sits out\"", "waiting = \"sore knee\"")).find("'knee'"), std::string::npos);
  EXPECT_NE(
      first_fault(with("sources = [\"patricios-2023\"]", "sources = [\"nobody-1999\"]")).find("a key of sources.toml"),
      std::string::npos);
  EXPECT_NE(
      first_fault(with("course = \"concussion\"", "course = \"knock\"", "rule_set.demand")).find("the id of a course"),
      std::string::npos);
  EXPECT_NE(first_fault(with("gate = \"contact\"", "gate = \"kontakt\"", "rule_set.demand")).find("the key of a gate"),
            std::string::npos);
  EXPECT_NE(first_fault(with("gate = \"contact\"\n", "")).find("each gate before one step"), std::string::npos);
  EXPECT_NE(first_fault(with("least_hours = 24", "least_hours = 23", "[same_day]")).find("24"), std::string::npos);
  EXPECT_NE(first_fault(with("id = \"general\"", "id = \"concussion\"")).find("an id of its own"), std::string::npos);
  EXPECT_NE(first_fault("").find("same_day"), std::string::npos);
}

}  // namespace
}  // namespace lanework::care
