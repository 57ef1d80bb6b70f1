#include "core/ledger/entry_id.h"

namespace lanework::ledger {
namespace {

constexpr std::size_t kTextLength = 36;
constexpr std::size_t kDashes[] = {8, 13, 18, 23};

bool is_dash(std::size_t position) {
  for (const std::size_t dash : kDashes) {
    if (position == dash) return true;
  }
  return false;
}

int value_of(char digit) {
  if (digit >= '0' && digit <= '9') return digit - '0';
  if (digit >= 'a' && digit <= 'f') return digit - 'a' + 10;
  if (digit >= 'A' && digit <= 'F') return digit - 'A' + 10;
  return -1;
}

}  // namespace

std::optional<EntryId> parse_entry_id(std::string_view text) {
  if (text.size() != kTextLength) return {};
  EntryId out;
  std::size_t digit = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (is_dash(i)) {
      if (text[i] != '-') return {};
      continue;
    }
    const int value = value_of(text[i]);
    if (value < 0) return {};
    std::uint8_t& byte = out.bytes[digit / 2];
    byte = static_cast<std::uint8_t>(digit % 2 == 0 ? value << 4 : byte | value);
    ++digit;
  }
  const bool version_7 = (out.bytes[6] >> 4) == 7;
  const bool variant_10 = (out.bytes[8] >> 6) == 2;
  if (!version_7 || !variant_10) return {};
  return out;
}

std::string to_text(const EntryId& id) {
  static constexpr std::string_view kDigits = "0123456789abcdef";
  std::string out;
  out.reserve(kTextLength);
  for (const std::uint8_t byte : id.bytes) {
    if (is_dash(out.size())) out += '-';
    out += kDigits[byte >> 4];
    out += kDigits[byte & 15U];
  }
  return out;
}

EntryId make_entry_id(std::uint64_t milliseconds, const std::array<std::uint8_t, 10>& random) {
  EntryId out;
  for (std::size_t i = 0; i < 6; ++i) out.bytes[i] = static_cast<std::uint8_t>(milliseconds >> (8 * (5 - i)));
  for (std::size_t i = 0; i < random.size(); ++i) out.bytes[6 + i] = random[i];
  out.bytes[6] = static_cast<std::uint8_t>(0x70U | (out.bytes[6] & 0x0fU));
  out.bytes[8] = static_cast<std::uint8_t>(0x80U | (out.bytes[8] & 0x3fU));
  return out;
}

std::uint64_t milliseconds_of(const EntryId& id) {
  std::uint64_t out = 0;
  for (std::size_t i = 0; i < 6; ++i) out = out << 8 | id.bytes[i];
  return out;
}

}  // namespace lanework::ledger
