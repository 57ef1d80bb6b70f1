// Which of the old code pages a text was written in, judged by the letters its languages use.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace lanework::read {

// Text in this encoding, by its ICU name; empty where a byte or a pair of bytes is not in it.
std::optional<std::string> to_utf8(std::string_view bytes, const char* encoding);

struct CodePage {
  const char* encoding;
  std::vector<const char*> languages;  // that are written in it
};
const std::vector<CodePage>& code_pages();

// The code page whose letters fit best; empty where none does.
const CodePage* likeliest_code_page(std::string_view bytes);

}  // namespace lanework::read
