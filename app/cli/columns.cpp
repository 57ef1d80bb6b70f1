#include "app/cli/columns.h"

#include <algorithm>

namespace lanework::cli {

std::size_t width(const std::string& text) {
  return static_cast<std::size_t>(
      std::count_if(text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

std::string padded(const std::string& text, std::size_t columns) {
  const std::size_t has = width(text);
  return has < columns ? text + std::string(columns - has, ' ') : text;
}

std::string in_columns(const std::vector<std::vector<std::string>>& rows, const std::string& indent) {
  std::vector<std::size_t> widest;
  for (const auto& row : rows) {
    if (widest.size() < row.size()) widest.resize(row.size(), 0);
    for (std::size_t i = 0; i < row.size(); ++i) widest[i] = std::max(widest[i], width(row[i]));
  }
  std::string out;
  for (const auto& row : rows) {
    std::string line = indent;
    for (std::size_t i = 0; i < row.size(); ++i) {
      line += i + 1 < row.size() ? padded(row[i], widest[i]) + "  " : row[i];
    }
    while (!line.empty() && line.back() == ' ') line.pop_back();
    out += line + "\n";
  }
  return out;
}

std::string minutes_seconds(long long seconds) {
  const std::string rest = std::to_string(seconds % 60);
  return std::to_string(seconds / 60) + ":" + (rest.size() < 2 ? "0" : "") + rest;
}

}  // namespace lanework::cli
