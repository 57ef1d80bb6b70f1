#include "core/club/icalendar_lines.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <cstdio>

namespace lanework::club {
namespace {

constexpr std::size_t kMostOctets = 75;  // of a line, RFC 5545, 3.1
constexpr std::string_view kReplacement = "\xEF\xBF\xBD";

// Octets of the character that starts there by its first octet and those after it; 0 where it is no UTF-8.
std::size_t character_at(std::string_view text, std::size_t at) {
  const auto octet = [&](std::size_t i) {
    return i < text.size() ? static_cast<unsigned char>(text[i]) : static_cast<unsigned char>(0);
  };
  const unsigned char first = octet(at);
  if (first < 0x80) return 1;
  const std::size_t length = first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : 2;
  if (first < 0xC2 || first > 0xF4 || at + length > text.size()) return 0;
  for (std::size_t i = 1; i < length; ++i) {
    if ((octet(at + i) & 0xC0) != 0x80) return 0;
  }
  const unsigned char second = octet(at + 1);
  const bool too_long = (first == 0xE0 && second < 0xA0) || (first == 0xF0 && second < 0x90);
  const bool outside = (first == 0xED && second > 0x9F) || (first == 0xF4 && second > 0x8F);
  return too_long || outside ? 0 : length;
}

}  // namespace

std::string calendar_text(std::string_view text) {
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t length = character_at(text, at);
    if (length != 1) {
      out += length == 0 ? kReplacement : text.substr(at, length);
      at += std::max<std::size_t>(length, 1);
      continue;
    }
    const char c = text[at++];
    if (c == '\\' || c == ';' || c == ',') {
      out += {'\\', c};
    } else if (c == '\n') {
      out += "\\n";
    } else if (c == '\r') {
      if (at >= text.size() || text[at] != '\n') out += "\\n";
    } else if (c == '\t' || (static_cast<unsigned char>(c) >= 0x20 && c != 0x7F)) {
      out += c;
    }
  }
  return out;
}

std::string calendar_line(std::string_view line) {
  std::string out;
  std::size_t octets = 0;
  for (std::size_t at = 0; at < line.size();) {
    const std::size_t length = std::max<std::size_t>(character_at(line, at), 1);
    if (octets + length > kMostOctets) {
      out += "\r\n ";
      octets = 1;
    }
    out += line.substr(at, length);
    octets += length;
    at += length;
  }
  return out + "\r\n";
}

std::string calendar_time(Date date, int minutes) {
  constexpr int kMinutesADay = 24 * 60;
  const CivilDate day = civil(Date{date.days_since_epoch + minutes / kMinutesADay});
  const int rest = minutes % kMinutesADay;
  std::array<char, 64> text{};
  std::snprintf(text.data(), text.size(), "%04d%02d%02dT%02d%02d00", day.year, day.month, day.day, rest / 60,
                rest % 60);
  return text.data();
}

std::string calendar_owner(std::string_view text) {
  std::uint64_t hash = 0xCBF29CE484222325ULL;
  for (const char c : text) {
    hash ^= static_cast<unsigned char>(c);
    hash *= 0x100000001B3ULL;
  }
  std::array<char, 32> hex{};
  std::snprintf(hex.data(), hex.size(), "%016llx", static_cast<unsigned long long>(hash));
  return hex.data();
}

}  // namespace lanework::club
