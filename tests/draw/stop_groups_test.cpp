// Stop lines by area: short enough for a glance, and nothing of a line is lost.
#include "app/draw/stop_groups.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <cctype>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <set>
#include <sstream>
#include <utility>

#include "core/base/document.h"

namespace lanework::draw {
namespace {

using Groups = std::vector<std::pair<std::string, std::vector<std::string>>>;

Groups grouped(const std::vector<std::string>& lines) {
  Groups out;
  for (const StopGroup& group : stop_groups(lines)) out.emplace_back(group.where, group.signs);
  return out;
}

// Every stop line of the shipped catalogue.
std::vector<std::string> shipped_lines() {
  std::vector<std::string> lines;
  for (const auto& entry :
       std::filesystem::directory_iterator(std::string(LANEWORK_SOURCE_DIR) + "/catalogue/drills")) {
    std::ifstream stream(entry.path(), std::ios::binary);
    const std::string text((std::istreambuf_iterator<char>(stream)), {});
    const auto document = parse_toml(entry.path().string(), text);
    Faults faults;
    if (!document) continue;
    TableReader root(entry.path().string(), &document.value().root, "", faults);
    for (const std::string& line : root.texts("stop_if")) lines.push_back(line);
  }
  std::sort(lines.begin(), lines.end());
  return lines;
}

std::vector<std::string> words_of(std::string text) {
  for (char& letter : text) {
    letter = std::isalpha(static_cast<unsigned char>(letter)) != 0
                 ? static_cast<char>(std::tolower(static_cast<unsigned char>(letter)))
                 : ' ';
  }
  std::istringstream stream(text);
  return {std::istream_iterator<std::string>(stream), {}};
}

std::set<std::string> words_of_all(const std::vector<std::string>& lines) {
  std::set<std::string> words;
  for (const StopGroup& group : stop_groups(lines)) {
    for (const std::string& sign : group.signs) {
      for (const std::string& word : words_of(sign)) words.insert(word);
    }
  }
  return words;
}

TEST(StopGroups, GoByPlace) {
  EXPECT_EQ(
      grouped({"Sharp pain in the groin or knee", "Pain that grows with each lap", "Pain in the heel, shin or knee",
               "The knee or ankle gives way", "Ankle gives way", "Groin pain above a mild ache",
               "Any grab or pull in the back of the thigh", "Pain on the inside of the knee"}),
      (Groups{{"In any drill", {"pain that grows with each lap"}},
              {"Hip or groin", {"sharp pain in the groin", "groin pain above a mild ache"}},
              {"Thigh", {"any grab or pull in the back of the thigh"}},
              {"Knee", {"pain in the knee", "the knee gives way", "pain on the inside of the knee"}},
              {"Lower leg, ankle or foot", {"pain in the heel or shin", "the ankle gives way"}}}));
}

TEST(StopGroups, KeepTheSaferLine) {
  EXPECT_EQ(grouped({"Sharp pain in the back", "Pain in the low back"}),
            (Groups{{"Back or side", {"sharp pain in the back", "pain in the low back"}}}));
  EXPECT_EQ(grouped({"Pain in the low back", "Sharp pain in the back", "Pain in the back"}),
            (Groups{{"Back or side", {"pain in the back"}}}));
}

TEST(StopGroups, LeaveOtherWordsAsTheyAre) {
  EXPECT_EQ(grouped({"The partner cannot hold steadily", "X-ray booked", "", "Pain in the knee and the toe",
                     "Neither knee nor ankle is steady"}),
            (Groups{{"In any drill",
                     {"the partner cannot hold steadily", "X-ray booked", "", "neither knee nor ankle is steady"}},
                    {"Knee", {"pain in the knee and the toe"}}}));
  EXPECT_EQ(grouped({"A fall onto the head or back"}),
            (Groups{{"Head", {"a fall onto the head"}}, {"Back or side", {"a fall onto the back"}}}));
  EXPECT_TRUE(stop_groups({}).empty());
}

TEST(StopGroups, SayAllThatOneLineSays) {
  const std::vector<std::string> lines = shipped_lines();
  ASSERT_GT(lines.size(), 100U);
  for (const std::string& line : lines) {
    const std::set<std::string> said = words_of_all({line});
    for (const std::string& word : words_of(line))
      EXPECT_TRUE(word == "or" || said.count(word)) << line << ": " << word;
  }
}

TEST(StopGroups, LoseNoPlaceAndNoSignOfAnEvening) {
  const std::vector<std::string> lines = shipped_lines();
  // Covered by a wider line: sharp pain by pain, the low back by the back.
  const std::set<std::string> coverable = {"or", "sharp", "low", "front", "of", "the"};
  EXPECT_TRUE(rc::check("every word of every line is said", [&] {
    const auto evening = *rc::gen::container<std::vector<std::string>>(rc::gen::elementOf(lines));
    const std::set<std::string> said = words_of_all(evening);
    for (const std::string& line : evening) {
      for (const std::string& word : words_of(line)) RC_ASSERT(coverable.count(word) || said.count(word));
    }
  }));
}

}  // namespace
}  // namespace lanework::draw
