// Texts as they may come from outside: any characters, what markup is made of, and bytes that are no text at all.
#pragma once

#include <rapidcheck.h>

#include <string>
#include <vector>

namespace lanework::report {

inline std::string utf8(char32_t point) {
  const auto bits = [](char32_t value) { return static_cast<char>(value); };
  if (point < 0x80) return {bits(point)};
  if (point < 0x800) return {bits(0xC0 | (point >> 6)), bits(0x80 | (point & 0x3F))};
  if (point < 0x10000) {
    return {bits(0xE0 | (point >> 12)), bits(0x80 | ((point >> 6) & 0x3F)), bits(0x80 | (point & 0x3F))};
  }
  return {bits(0xF0 | (point >> 18)), bits(0x80 | ((point >> 12) & 0x3F)), bits(0x80 | ((point >> 6) & 0x3F)),
          bits(0x80 | (point & 0x3F))};
}

inline rc::Gen<std::string> any_text() {
  const auto piece = rc::gen::oneOf(
      rc::gen::map(rc::gen::inRange<std::uint32_t>(0, 0x110000), [](std::uint32_t point) { return utf8(point); }),
      rc::gen::element<std::string>("<", ">", "&", "\"", "'", "</script>", "<script>", "<!--", "-->", "]]>", "&lt;",
                                    "&#0;", "</style>", "</title>", "\\u003c", "\\", " ", "\n", "\r", "\t"),
      rc::gen::element<std::string>("\u202E", "\u2066", "\u200F", "\uFEFF", "\u0301", "\u2028", "\u05D0", "\u0641"),
      rc::gen::map(rc::gen::arbitrary<char>(), [](char byte) { return std::string(1, byte); }));
  return rc::gen::map(rc::gen::container<std::vector<std::string>>(piece), [](const std::vector<std::string>& pieces) {
    std::string text;
    for (const std::string& part : pieces) text += part;
    return text;
  });
}

}  // namespace lanework::report
