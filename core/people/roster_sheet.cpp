#include "core/people/roster_sheet.h"

#include <array>

namespace lanework::people {
namespace {

std::string ascii_lower(std::string_view text) {
  std::string out(text);
  for (char& c : out) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return out;
}

// Bytes of white space at the start of the text; 0 where there is none.
std::size_t white_space_at(std::string_view text) {
  constexpr std::array<std::string_view, 6> kWide = {"\u00A0", "\u2007", "\u202F", "\u3000", "\u200B", "\uFEFF"};
  const char c = text.front();
  if (c == ' ' || (c >= '\t' && c <= '\r')) return 1;
  for (const std::string_view wide : kWide) {
    if (text.substr(0, wide.size()) == wide) return wide.size();
  }
  return 0;
}

}  // namespace

std::string same_form(const TextForms& forms, std::string_view text) {
  return forms.same ? forms.same(text) : ascii_lower(text);
}

std::string loose_form(const TextForms& forms, std::string_view text) {
  return forms.loose ? forms.loose(text) : ascii_lower(text);
}

std::string tidy(std::string_view text) {
  std::string out;
  bool gap = false;
  while (!text.empty()) {
    if (const std::size_t blank = white_space_at(text); blank > 0) {
      gap = true;
      text.remove_prefix(blank);
      continue;
    }
    if (gap && !out.empty()) out += ' ';
    gap = false;
    out += text.front();
    text.remove_prefix(1);
  }
  return out;
}

Fault cell_fault(FaultCode code, const Sheet& sheet, const SheetCell& cell, const std::string& heading,
                 std::string expected, std::string hint) {
  const std::string text = tidy(cell.text);
  return Fault{code,
               {sheet.file, cell.line, 0, heading},
               text.empty() ? "an empty cell" : quote(text),
               std::move(expected),
               std::move(hint)};
}

Fault row_fault(FaultCode code, const Sheet& sheet, int line, std::string found, std::string expected,
                std::string hint) {
  return Fault{code, {sheet.file, line, 0, {}}, std::move(found), std::move(expected), std::move(hint)};
}

}  // namespace lanework::people
