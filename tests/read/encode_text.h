// UTF-8 to the bytes a spreadsheet would write, for tests.
#pragma once

#include <string>

namespace lanework::read {

// encoding: as ICU names it. Throws where a letter is not in the encoding.
std::string encode(const std::string& utf8, const char* encoding);

}  // namespace lanework::read
