#include "core/base/result.h"

#include <array>
#include <cstdio>

namespace lanework {

namespace {

// Control characters as \xNN: a file name, a key or a parser's words must not steer a terminal or break the line.
void append_inert(std::string& out, char c) {
  const auto byte = static_cast<unsigned char>(c);
  if (byte >= 0x20 && byte != 0x7F) {
    out += c;
    return;
  }
  std::array<char, 5> hex{};
  std::snprintf(hex.data(), hex.size(), "\\x%02X", byte);
  out += hex.data();
}

}  // namespace

const FaultRow& fault_row(FaultCode code) {
  static constexpr FaultRow kRows[] = {
#define LANEWORK_FAULT(name, key, exit_status, http_status, sentence) {key, exit_status, http_status, sentence},
#include "core/base/faults.def"
#undef LANEWORK_FAULT
  };
  return kRows[static_cast<std::size_t>(code)];
}

std::string to_line(const Fault& fault) {
  std::string line;
  if (!fault.place.file.empty()) {
    line += fault.place.file;
    if (fault.place.line > 0) line += ':' + std::to_string(fault.place.line);
    if (fault.place.line > 0 && fault.place.column > 0) line += ':' + std::to_string(fault.place.column);
    line += ": ";
  }
  if (!fault.place.field.empty()) line += fault.place.field + ": ";
  if (!fault.found.empty()) line += "found " + fault.found;
  if (!fault.found.empty() && !fault.expected.empty()) line += ", ";
  if (!fault.expected.empty()) line += "expected " + fault.expected;
  if (fault.found.empty() && fault.expected.empty()) line += fault_row(fault.code).sentence;
  if (!fault.hint.empty()) line += " (" + fault.hint + ")";
  std::string inert;
  for (const char c : line) append_inert(inert, c);
  return inert;
}

std::string quote(const std::string& text) {
  constexpr int kMostCodePoints = 60;
  std::string out = "'";
  int code_points = 0;
  for (const char raw : text) {
    const auto byte = static_cast<unsigned char>(raw);
    const bool starts_code_point = (byte & 0xC0U) != 0x80U;
    if (starts_code_point && ++code_points > kMostCodePoints) return out + "...'";
    append_inert(out, raw);
  }
  return out + "'";
}

}  // namespace lanework
