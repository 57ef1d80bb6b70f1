// Durations as people say them.
#pragma once

#include <string>

namespace lanework::plan {

// '45 s', '2 min', '2 min 10 s'.
inline std::string in_words(std::int64_t seconds) {
  const std::int64_t minutes = seconds / 60;
  const std::int64_t rest = seconds % 60;
  if (minutes == 0) return std::to_string(rest) + " s";
  std::string out = std::to_string(minutes) + " min";
  if (rest > 0) out += " " + std::to_string(rest) + " s";
  return out;
}

}  // namespace lanework::plan
