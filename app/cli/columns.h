// Text in columns: padded by what a terminal shows, not by bytes.
#pragma once

#include <string>
#include <vector>

namespace lanework::cli {

// Number of columns a terminal needs for UTF-8 text (code points; good enough for our own words).
std::size_t width(const std::string& text);
std::string padded(const std::string& text, std::size_t columns);

// Rows as lines, each column as wide as its widest cell, two spaces between; the last one is not padded.
std::string in_columns(const std::vector<std::vector<std::string>>& rows, const std::string& indent);

// '4:05': minutes and seconds.
std::string minutes_seconds(long long seconds);

}  // namespace lanework::cli
