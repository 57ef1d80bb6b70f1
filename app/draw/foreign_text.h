// Makes a text from outside safe to draw: one line of valid UTF-8 that cannot turn the reading direction of
// its surroundings, stack endless accents or grow without end. Letters of every script stay as they are.
#pragma once

#include <limits>
#include <string>

namespace lanework::draw {

// Control characters, line and paragraph separators become single spaces; characters that embed, override or
// isolate a direction, byte order marks, tags and noncharacters are dropped; broken UTF-8 becomes U+FFFD; more than
// four combining marks on one letter are cut to four; at most most_code_points are kept. Ends are trimmed.
std::string clean_text(const std::string& foreign, int most_code_points = 600);
constexpr int kAnyLength = std::numeric_limits<int>::max();

// Is the first letter of a script that is read from the right?
bool reads_from_right(const std::string& text);

}  // namespace lanework::draw
