// The page's inks are the card's.
#include "app/report/style_tokens.h"

#include <gtest/gtest.h>

#include <regex>

#include "app/draw/tokens.h"

namespace lanework::report {
namespace {

double share(const std::string& hex) { return static_cast<double>(std::stoi(hex, nullptr, 16)) / 255; }

TEST(StyleTokens, AreTheInksOfTheCard) {
  const std::string style = style_tokens();
  const std::vector<std::pair<std::string, draw::Colour>> inks = {{"ink", draw::kInkColour},
                                                                  {"soft", draw::kSoftColour},
                                                                  {"chalk", draw::kChalkColour},
                                                                  {"accent", draw::kAccentColour},
                                                                  {"paper", draw::kPaperColour}};
  for (const auto& [name, colour] : inks) {
    std::smatch found;
    ASSERT_TRUE(std::regex_search(style, found, std::regex("--" + name + ":#(..)(..)(..);"))) << name;
    EXPECT_NEAR(share(found[1]), colour.red, 0.002) << name;
    EXPECT_NEAR(share(found[2]), colour.green, 0.002) << name;
    EXPECT_NEAR(share(found[3]), colour.blue, 0.002) << name;
  }
}

}  // namespace
}  // namespace lanework::report
