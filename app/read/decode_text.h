// Bytes of a text file to UTF-8, as spreadsheets really write them: UTF-8 and UTF-16 with or without a
// byte order mark, and the code pages of Windows. Workbooks and other binary files are told apart and refused.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/people/roster_sheet.h"

namespace lanework::read {

// Encodings that can be stated by name: 'utf-8', 'utf-16le', 'utf-16be', 'windows-1250' to 'windows-1258',
// 'windows-874', 'shift_jis', 'gb18030', 'euc-kr', 'big5'.
const std::vector<std::string_view>& encoding_names();

struct DecodedText {
  std::string text;      // UTF-8, without a byte order mark, without NUL
  std::string encoding;  // one of encoding_names()
};

// stated: one of encoding_names(), or empty to find out. A byte order mark wins over a guess. Where the
// bytes fit several code pages, the one whose languages use the letters found is taken, the western one
// first; state the encoding where names still come out wrong.
Result<DecodedText> decode_text(const std::string& file, std::string_view bytes, const std::string& stated = {});

// How people/ compares text: Unicode normal forms and case folding of every script.
people::TextForms unicode_text_forms();

}  // namespace lanework::read
