#include "core/findings/emphasis_reference.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/findings/shipped_reference.h"

namespace lanework::findings {
namespace {

// The shipped text with one thing exchanged; its faults as lines.
std::string faults_with(const std::string& from, const std::string& to) {
  std::string text = shipped_reference_text();
  const std::size_t at = text.find(from);
  EXPECT_NE(at, std::string::npos) << from;
  text.replace(at, from.size(), to);
  const auto read = reference_from(text);
  std::string lines;
  if (!read)
    for (const Fault& fault : read.faults()) lines += to_line(fault) + "\n";
  EXPECT_EQ(std::count(lines.begin(), lines.end(), '\n'), 1) << lines;
  return lines;
}

testing::AssertionResult has(const std::string& lines, const std::string& part) {
  if (lines.find(part) != std::string::npos) return testing::AssertionSuccess();
  return testing::AssertionFailure() << lines;
}

TEST(EmphasisReference, TheShippedOneIsWhole) {
  const auto read = reference_from(shipped_reference_text());
  ASSERT_TRUE(read.ok()) << to_line(read.faults().front());
  int sum = 0;
  for (const RegionReference& row : read.value().regions) sum += row.usual_percent;
  EXPECT_EQ(sum, 100);
  EXPECT_EQ(read.value().regions.size(), record_terms().of(records::Field::kRegion).size() - 1);
  EXPECT_TRUE(std::is_sorted(read.value().regions.begin(), read.value().regions.end(),
                             [](const auto& a, const auto& b) { return a.region < b.region; }));
}

TEST(EmphasisReference, EverySourceIsKnown) {
  std::ifstream in(LANEWORK_SOURCE_DIR "/catalogue/sources.toml");
  std::stringstream text;
  text << in.rdbuf();
  const Document sources = parse_toml("sources.toml", text.str()).value();
  std::vector<std::string> known;
  for (const Node& row : sources.root.find("source")->items) known.push_back(row.find("key")->text);
  const auto is_known = [&](const std::string& key) {
    return std::find(known.begin(), known.end(), key) != known.end();
  };
  for (const std::string& key : shipped_reference().sources) EXPECT_TRUE(is_known(key)) << key;
  for (const RegionReference& row : shipped_reference().regions)
    for (const std::string& key : row.sources) EXPECT_TRUE(is_known(key)) << key;
}

TEST(EmphasisReference, EveryMistakeIsOneLine) {
  EXPECT_TRUE(has(faults_with("key = \"ankle\"\nusual_percent = 18", "key = \"ankle\"\nusual_percent = 19"),
                  "region: found usual shares of 101 % together, expected 100 %"));
  EXPECT_TRUE(has(faults_with("families = [\"balance\"]", "families = [\"balence\"]"), "found 'balence'"));
  EXPECT_TRUE(has(faults_with("key = \"foot\"", "key = \"feet\""), "found 'feet'"));
  EXPECT_TRUE(has(faults_with("key = \"foot\"", "key = \"ankle\""), "found 'ankle', expected each region once"));
  EXPECT_TRUE(has(faults_with("key = \"foot\"", "key = \"several-regions\""), "a region of the body"));
  EXPECT_TRUE(has(faults_with("[\"exacerbation\"]", "[\"worse\"]"), "leave_out_recurrence: found 'worse'"));
  EXPECT_TRUE(has(faults_with("margin_percent = 25", "margin_percent = -1"), "margin_percent: found -1"));
  EXPECT_TRUE(has(faults_with("weighs_as_injuries = 40", "weighs_as_injuries = 0"), "weighs_as_injuries: found 0"));
  EXPECT_TRUE(has(faults_with("sources = [\"own-judgement\"]", "sources = []"), "sources: found nothing"));
  EXPECT_TRUE(has(faults_with("fewest_injuries = 30", "fewest_injuries = 30\nmore = 1"), "more: found"));
}

TEST(EmphasisReference, ARegionThatLacksIsNamed) {
  std::string text = shipped_reference_text();
  text.erase(text.find("[[region]]\nkey = \"foot\""));
  const auto read = reference_from(text);
  ASSERT_FALSE(read.ok());
  EXPECT_TRUE(has(to_line(read.faults().front()), "found no row 'foot'"));
}

}  // namespace
}  // namespace lanework::findings
