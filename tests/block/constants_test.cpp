// The block's constants as rows: each with a source, and none left out.
#include "core/block/constants.h"

#include <gtest/gtest.h>

#include <fstream>
#include <iterator>
#include <set>
#include <string>

namespace lanework::block {
namespace {

std::string text_of(const char* path) {
  std::ifstream in(std::string(LANEWORK_SOURCE_DIR "/") + path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

TEST(BlockConstants, EachHasASource) {
  const std::string sources = text_of("catalogue/sources.toml");
  std::set<std::string> names;
  std::vector<clock::ConstantRow> rows = constant_rows();
  const std::vector<clock::ConstantRow> rolling = rolling_constant_rows();
  rows.insert(rows.end(), rolling.begin(), rolling.end());
  EXPECT_GE(rolling.size(), 10U);
  EXPECT_GE(rows.size(), 29U);
  for (const clock::ConstantRow& row : rows) {
    EXPECT_NE(sources.find("key = \"" + row.source + "\""), std::string::npos) << row.name;
    EXPECT_FALSE(row.why.empty()) << row.name;
    EXPECT_FALSE(row.unit.empty()) << row.name;
    EXPECT_TRUE(names.insert(row.name).second) << row.name << " stands twice";
  }
}

std::string value_of(const std::string& name) {
  for (const auto& rows : {constant_rows(), rolling_constant_rows()}) {
    for (const clock::ConstantRow& row : rows) {
      if (row.name == name) return row.value;
    }
  }
  return "no such row";
}

TEST(BlockConstants, RowsSayWhatTheSolverGoesBy) {
  EXPECT_EQ(value_of("kHoursBetweenHard"), std::to_string(kHoursBetweenHard));
  EXPECT_EQ(value_of("kPinned"), std::to_string(kPinned));
  EXPECT_EQ(value_of("kComingChange"), std::to_string(kComingChange));
  EXPECT_EQ(value_of("kFewDidIt"), std::to_string(kFewDidIt));
}

}  // namespace
}  // namespace lanework::block
