#include "app/draw/foreign_text.h"

#include <glib.h>

#include <memory>

namespace lanework::draw {
namespace {

constexpr int kMostMarks = 4;

bool between(gunichar c, gunichar from, gunichar to) { return c >= from && c <= to; }

// Unicode's explicit direction characters (UAX 9), marks of byte order, annotations and tags; what is never
// a character.
bool is_dropped(gunichar c) {
  return between(c, 0x202A, 0x202E) || between(c, 0x2066, 0x2069) || between(c, 0x200E, 0x200F) || c == 0x061C ||
         c == 0xFEFF || between(c, 0xFFF9, 0xFFFB) || between(c, 0xE0000, 0xE007F) || c == 0x00AD ||
         between(c, 0xFDD0, 0xFDEF) || (c & 0xFFFE) == 0xFFFE;
}

bool is_space(gunichar c) {
  return g_unichar_isspace(c) != 0 || g_unichar_iscntrl(c) != 0 || between(c, 0x2028, 0x2029);
}

void append(std::string& out, gunichar c) {
  char bytes[6];
  out.append(bytes, static_cast<std::size_t>(g_unichar_to_utf8(c, bytes)));
}

}  // namespace

std::string clean_text(const std::string& foreign, int most_code_points) {
  const std::unique_ptr<char, decltype(&g_free)> valid(
      g_utf8_make_valid(foreign.data(), static_cast<gssize>(foreign.size())), &g_free);
  std::string out;
  int code_points = 0;
  int marks = 0;
  bool space_owed = false;
  for (const char* at = valid.get(); *at != '\0' && code_points < most_code_points; at = g_utf8_next_char(at)) {
    const gunichar c = g_utf8_get_char(at);
    if (is_dropped(c)) continue;
    if (is_space(c)) {
      space_owed = !out.empty();
      continue;
    }
    marks = g_unichar_ismark(c) != 0 ? marks + 1 : 0;
    if (marks > kMostMarks) continue;
    if (space_owed) out += ' ';
    space_owed = false;
    append(out, c);
    ++code_points;
  }
  return out;
}

bool reads_from_right(const std::string& text) {
  for (const char* at = text.c_str(); *at != '\0'; at = g_utf8_next_char(at)) {
    const gunichar c = g_utf8_get_char(at);
    if (g_unichar_isalpha(c) == 0) continue;
    switch (g_unichar_get_script(c)) {
      case G_UNICODE_SCRIPT_ARABIC:
      case G_UNICODE_SCRIPT_HEBREW:
      case G_UNICODE_SCRIPT_SYRIAC:
      case G_UNICODE_SCRIPT_THAANA:
      case G_UNICODE_SCRIPT_NKO:
      case G_UNICODE_SCRIPT_ADLAM:
        return true;
      default:
        return false;
    }
  }
  return false;
}

}  // namespace lanework::draw
