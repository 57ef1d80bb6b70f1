#include "core/records/split_row.h"

#include <algorithm>
#include <bit>
#include <cstdint>
#include <cstring>

namespace lanework::records {
namespace {

constexpr std::size_t kWord = 8;    // bytes looked at together
constexpr std::size_t kBlock = 64;  // bytes whose marks fill one word of bits

std::uint64_t load(const char* from) {
  std::uint64_t word = 0;
  std::memcpy(&word, from, kWord);
  return word;
}

// The top bit of every byte that is c, and no other bit.
std::uint64_t bytes_that_are(std::uint64_t word, char c) {
  constexpr std::uint64_t kOnes = 0x0101010101010101U;
  constexpr std::uint64_t kLow = 0x7F7F7F7F7F7F7F7FU;
  const std::uint64_t apart = word ^ (kOnes * static_cast<unsigned char>(c));
  return ~(((apart & kLow) + kLow) | apart | kLow);
}

// The eight top bits next to each other, first byte lowest.
std::uint64_t gathered(std::uint64_t top_bits) { return ((top_bits >> 7U) * 0x0102040810204080U) >> 56U; }

}  // namespace

// Commas are found eight bytes at a time: a loop that decides byte by byte is mostly wrong guesses of the processor.
bool RowSplitter::split(std::string_view row, HoursCells& cells) {
  if (std::endian::native != std::endian::little || row.size() < kWord) return split_quoted(row, cells);
  const char* const begin = row.data();
  const char* from = begin;
  std::uint64_t quotes = 0;
  std::size_t found = 0;
  for (std::size_t block = 0; block < row.size(); block += kBlock) {
    std::uint64_t commas = 0;
    for (std::size_t at = block; at < row.size() && at < block + kBlock; at += kWord) {
      const std::size_t left = row.size() - at;
      const std::uint64_t word =
          left >= kWord ? load(begin + at) : load(begin + row.size() - kWord) >> (8 * (kWord - left));
      quotes |= bytes_that_are(word, '"');
      commas |= gathered(bytes_that_are(word, ',')) << (at - block);
    }
    for (; commas != 0; commas &= commas - 1) {
      const char* comma = begin + block + std::countr_zero(commas);
      if (found + 1 < kHoursColumns) cells[found] = {from, static_cast<std::size_t>(comma - from)};
      ++found;
      from = comma + 1;
    }
  }
  if (quotes != 0) return split_quoted(row, cells);
  if (found + 1 != kHoursColumns) return false;
  cells[found] = {from, static_cast<std::size_t>(begin + row.size() - from)};
  return true;
}

bool RowSplitter::split_quoted(std::string_view row, HoursCells& cells) {
  for (std::size_t i = 0; i < kHoursColumns; ++i) {
    const bool last = i + 1 == kHoursColumns;
    if (row.empty() || row.front() != '"') {
      const std::size_t end = std::min(row.find(','), row.size());
      if (last != (end == row.size())) return false;
      cells[i] = row.substr(0, end);
      row.remove_prefix(last ? end : end + 1);
      continue;
    }
    std::string& text = unquoted_[i];
    text.clear();
    std::size_t at = 1;
    for (; at < row.size() && (row[at] != '"' || row.substr(at, 2) == "\"\""); ++at) {
      if (row[at] == '"') ++at;
      text += row[at];
    }
    const bool ends = at + 1 == row.size();
    if (at >= row.size() || last != ends || (!last && row[at + 1] != ',')) return false;
    cells[i] = text;
    row.remove_prefix(last ? at + 1 : at + 2);
  }
  return true;
}

}  // namespace lanework::records
