#include "core/care/growth/growth_table.h"

#include <gtest/gtest.h>

#include <fstream>
#include <sstream>

#include "tests/care/shipped_growth.h"

namespace lanework::care::growth {
namespace {

std::string shipped_text() {
  std::ifstream in(catalogue::test::shipped_folder() / "care" / "growth.toml");
  std::stringstream text;
  text << in.rdbuf();
  return text.str();
}

std::string faults_with(const std::string& what, const std::string& instead) {
  std::string text = shipped_text();
  const std::size_t at = text.find(what);
  if (at == std::string::npos) return "not there: " + what;
  text.replace(at, what.size(), instead);
  const auto document = parse_toml("growth.toml", text);
  if (!document) return catalogue::test::all_lines(document.faults());
  const auto table = read_growth_table(document.value());
  return table ? "" : catalogue::test::all_lines(table.faults());
}

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

TEST(GrowthTable, EverySourceIsKnown) {
  std::istringstream lines(shipped_text());
  int seen = 0;
  for (std::string line; std::getline(lines, line);) {
    if (!line.starts_with("sources = ")) continue;
    for (std::size_t from = line.find('"'); from != std::string::npos;) {
      const std::size_t to = line.find('"', from + 1);
      const std::string key = line.substr(from + 1, to - from - 1);
      EXPECT_NE(catalogue::test::shipped_catalogue().source(key), nullptr) << key;
      ++seen;
      from = line.find('"', to + 1);
    }
  }
  EXPECT_GE(seen, 7);
}

TEST(GrowthTable, EveryMistakeSaysWhere) {
  EXPECT_TRUE(has(faults_with("least_days_between = 90", "least_days_between = 30"),
                  "measuring.least_days_between: found 30, expected a whole number from 80 to 365"));
  EXPECT_TRUE(has(faults_with("measuring_error_cm = 0.5", "measuring_error_cm = 5"), "measuring_error_cm: found 5"));
  EXPECT_TRUE(has(faults_with("fast_from_cm_a_year = 7.2", "fast_from_cm_a_year = 3.5"), "more than slow_below"));
  EXPECT_TRUE(has(faults_with("sitting_share = [0.45, 0.60]", "sitting_share = [0.60, 0.45]"), "the larger first"));
  EXPECT_TRUE(
      has(faults_with("contacts_percent = 50", "contacts_percent = 150"), "effect.contacts_percent: found 150"));
  EXPECT_TRUE(has(faults_with("age = 7\n", "age = 8\n"), "expected 7: ages ascend by a year"));
  EXPECT_TRUE(has(faults_with("age = 9.5\n", "age = 9.7\n"), "ages that ascend by half a year"));
  EXPECT_TRUE(has(faults_with("boys = [-11.0696, 1.06853, ", "boys = [-11.0696, "), "a list of 4 numbers"));
  EXPECT_TRUE(has(faults_with("[effect]", "[effekt]"), "effect: found nothing"));
  EXPECT_TRUE(has(faults_with("from_percent = 85", "from_percent = 0"), "expected 0 first, then rising"));
  EXPECT_TRUE(has(faults_with("sources = [\"own-judgement\"]", "sources = []"), "sources: found nothing"));
}

TEST(GrowthTable, AgesBeyondTheRowsTakeTheNearest) {
  EXPECT_EQ(plausible_at(test::shipped_table(), 3).age, 6);
  EXPECT_EQ(plausible_at(test::shipped_table(), 13).age, 13);
  EXPECT_EQ(plausible_at(test::shipped_table(), 40).age, 18);
}

}  // namespace
}  // namespace lanework::care::growth
