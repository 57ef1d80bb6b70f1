#include "app/report/style_tokens.h"

#include <array>
#include <cmath>
#include <cstdio>

#include "app/draw/tokens.h"

namespace lanework::report {
namespace {

int in_255(double share) { return static_cast<int>(std::lround(share * 255)); }

std::string token(const char* name, const draw::Colour& colour) {
  std::array<char, 40> text{};
  std::snprintf(text.data(), text.size(), "--%s:#%02x%02x%02x;", name, static_cast<unsigned>(in_255(colour.red)),
                static_cast<unsigned>(in_255(colour.green)), static_cast<unsigned>(in_255(colour.blue)));
  return text.data();
}

}  // namespace

std::string style_tokens() {
  return ":root{" + token("ink", draw::kInkColour) + token("soft", draw::kSoftColour) +
         token("chalk", draw::kChalkColour) + token("accent", draw::kAccentColour) +
         token("paper", draw::kPaperColour) + "}\n";
}

}  // namespace lanework::report
