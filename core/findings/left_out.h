// What a season's records hold no count of, because nobody agreed to it; said with the report, so that nobody takes its
// numbers for all there was (docs/model/consent.md).
#pragma once

#include <cstdint>
#include <string>

#include "core/findings/claims.h"

namespace lanework::findings {

struct LeftOut {
  std::int64_t injuries = 0;  // for want of consent to statistics
  std::int64_t people = 0;    // whose injuries these are
  std::int64_t places = 0;    // at sessions, of players counted by name
  std::int64_t closed = 0;    // injuries and screens of any day, for want of consent to a record
};

// One or two sentences; empty where there is nothing to say. A board learns how many injuries only where they are five
// at least, of five people at least, and else not even whether there are any: both would be about a child whose family
// said no (docs/model/release.md has the same rule).
std::string left_out_words(const LeftOut& left_out, Reader reader, Language language = Language::kEnglish);

}  // namespace lanework::findings
