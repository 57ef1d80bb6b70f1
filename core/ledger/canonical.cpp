#include "core/ledger/canonical.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstdint>
#include <string_view>
#include <vector>

namespace lanework::ledger {
namespace {

constexpr std::int64_t kMostExact = (std::int64_t{1} << 53) - 1;
constexpr int kMostPlainDigits = 21;  // 1e21 is the first number with an exponent
constexpr double kFirstWithExponent = 1e21;
constexpr int kMostLeadingZeros = 6;  // 0.000001 still stands plainly
constexpr char32_t kFirstBeyond16 = 0x10000;

bool is_ascii(std::string_view text) {
  return std::all_of(text.begin(), text.end(), [](char c) { return static_cast<unsigned char>(c) < 0x80; });
}

// The code points of UTF-8; empty where it is none.
std::optional<std::vector<char32_t>> code_points(std::string_view text) {
  std::vector<char32_t> out;
  for (std::size_t i = 0; i < text.size();) {
    const auto lead = static_cast<unsigned char>(text[i]);
    const std::size_t length = lead < 0x80   ? 1
                               : lead < 0xc2 ? 0
                               : lead < 0xe0 ? 2
                               : lead < 0xf0 ? 3
                               : lead < 0xf5 ? 4
                                             : 0;
    if (length == 0 || i + length > text.size()) return {};
    char32_t point = length == 1 ? lead : lead & (0xffU >> (length + 1));
    for (std::size_t k = 1; k < length; ++k) {
      const auto next = static_cast<unsigned char>(text[i + k]);
      if ((next & 0xc0U) != 0x80U) return {};
      point = point << 6 | (next & 0x3fU);
    }
    const bool overlong = (length == 3 && point < 0x800) || (length == 4 && point < kFirstBeyond16);
    if (overlong || (point >= 0xd800 && point <= 0xdfff) || point > 0x10ffff) return {};
    out.push_back(point);
    i += length;
  }
  return out;
}

std::vector<char16_t> utf_16(const std::vector<char32_t>& points) {
  std::vector<char16_t> out;
  for (const char32_t point : points) {
    if (point < kFirstBeyond16) {
      out.push_back(static_cast<char16_t>(point));
      continue;
    }
    out.push_back(static_cast<char16_t>(0xd800 + ((point - kFirstBeyond16) >> 10)));
    out.push_back(static_cast<char16_t>(0xdc00 + ((point - kFirstBeyond16) & 0x3ff)));
  }
  return out;
}

// However it was written, '9.007199254740993e15': its text would have whole digits only, and be read back as a whole
// number that is none of those that everybody reads alike.
bool is_whole_and_inexact(double value) {
  const double size = std::abs(value);
  return size > static_cast<double>(kMostExact) && size < kFirstWithExponent;
}

class Writer {
 public:
  bool write(const Node& node) {
    switch (node.kind) {
      case Node::Kind::kText:
        return write_text(node.text);
      case Node::Kind::kInteger:
        if (node.integer > kMostExact || node.integer < -kMostExact) return false;
        write_integer(node.integer);
        return true;
      case Node::Kind::kReal:
        if (!std::isfinite(node.real) || is_whole_and_inexact(node.real)) return false;
        out += number_text(node.real);
        return true;
      case Node::Kind::kBoolean:
        out += node.boolean ? "true" : "false";
        return true;
      case Node::Kind::kArray:
        return write_array(node);
      case Node::Kind::kTable:
        return write_table(node);
    }
    return false;
  }

  std::string out;

 private:
  bool write_text(const std::string& text) {
    if (!is_ascii(text) && !code_points(text)) return false;
    out += '"';
    const char* at = text.data();
    const char* const end = at + text.size();
    while (at != end) {
      const char* const from = at;
      while (at != end && !is_escaped(*at)) ++at;
      out.append(from, at);
      if (at != end) write_escaped(*at++);
    }
    out += '"';
    return true;
  }

  static bool is_escaped(char c) { return static_cast<unsigned char>(c) < 0x20 || c == '"' || c == '\\'; }

  void write_escaped(char c) {
    static constexpr std::string_view kShort = "\"\\\b\f\n\r\t";
    static constexpr std::string_view kLetter = "\"\\bfnrt";
    static constexpr std::string_view kDigits = "0123456789abcdef";
    out += '\\';
    if (const std::size_t at = kShort.find(c); at != std::string_view::npos) {
      out += kLetter[at];
      return;
    }
    out += "u00";
    out += kDigits[static_cast<unsigned char>(c) >> 4];
    out += kDigits[static_cast<unsigned char>(c) & 15U];
  }

  void write_integer(std::int64_t value) {
    std::array<char, 24> digits{};
    const auto written = std::to_chars(digits.data(), digits.data() + digits.size(), value);
    out.append(digits.data(), written.ptr);
  }

  bool write_array(const Node& node) {
    out += '[';
    for (std::size_t i = 0; i < node.items.size(); ++i) {
      if (i > 0) out += ',';
      if (!write(node.items[i])) return false;
    }
    out += ']';
    return true;
  }

  bool write_table(const Node& node) {
    struct Keyed {
      std::vector<char16_t> key;
      const std::pair<std::string, Node>* entry;
    };
    if (auto plain = in_plain_order(node)) return write_entries(*plain);
    std::vector<Keyed> order;
    for (const auto& entry : node.entries) {
      const auto points = code_points(entry.first);
      if (!points) return false;
      order.push_back({utf_16(*points), &entry});
    }
    std::sort(order.begin(), order.end(), [](const Keyed& a, const Keyed& b) { return a.key < b.key; });
    const auto same = [](const Keyed& a, const Keyed& b) { return a.key == b.key; };
    if (std::adjacent_find(order.begin(), order.end(), same) != order.end()) return false;
    std::vector<const std::pair<std::string, Node>*> entries;
    for (const Keyed& one : order) entries.push_back(one.entry);
    return write_entries(entries);
  }

  // Keys of ASCII alone, which is nearly always: bytes order as UTF-16 code units do. Empty where it is not so, or
  // where one key stands there twice.
  static std::optional<std::vector<const std::pair<std::string, Node>*>> in_plain_order(const Node& node) {
    std::vector<const std::pair<std::string, Node>*> out;
    out.reserve(node.entries.size());
    for (const auto& entry : node.entries) {
      if (!is_ascii(entry.first)) return {};
      out.push_back(&entry);
    }
    std::sort(out.begin(), out.end(), [](const auto* a, const auto* b) { return a->first < b->first; });
    const auto same = [](const auto* a, const auto* b) { return a->first == b->first; };
    if (std::adjacent_find(out.begin(), out.end(), same) != out.end()) return {};
    return out;
  }

  bool write_entries(const std::vector<const std::pair<std::string, Node>*>& entries) {
    out += '{';
    for (std::size_t i = 0; i < entries.size(); ++i) {
      if (i > 0) out += ',';
      write_text(entries[i]->first);
      out += ':';
      if (!write(entries[i]->second)) return false;
    }
    out += '}';
    return true;
  }
};

}  // namespace

std::string number_text(double value) {
  if (value == 0) return "0";
  std::array<char, 32> buffer{};
  const auto written =
      std::to_chars(buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::scientific);
  const std::string_view shortest(buffer.data(), static_cast<std::size_t>(written.ptr - buffer.data()));
  const std::size_t e = shortest.find('e');
  int exponent = 0;
  std::string_view power = shortest.substr(e + 1);
  if (power.front() == '+') power.remove_prefix(1);
  std::from_chars(power.data(), power.data() + power.size(), exponent);
  std::string digits;
  for (const char c : shortest.substr(0, e)) {
    if (c >= '0' && c <= '9') digits += c;
  }
  const std::string sign = shortest.front() == '-' ? "-" : "";
  const int count = static_cast<int>(digits.size());
  const int point = exponent + 1;  // where the decimal point stands, counted from the first digit
  if (count <= point && point <= kMostPlainDigits)
    return sign + digits + std::string(static_cast<std::size_t>(point - count), '0');
  if (0 < point && point <= kMostPlainDigits) {
    return sign + digits.substr(0, static_cast<std::size_t>(point)) + "." +
           digits.substr(static_cast<std::size_t>(point));
  }
  if (-kMostLeadingZeros < point && point <= 0) {
    return sign + "0." + std::string(static_cast<std::size_t>(-point), '0') + digits;
  }
  const std::string mantissa = count == 1 ? digits : digits.substr(0, 1) + "." + digits.substr(1);
  return sign + mantissa + "e" + (exponent < 0 ? "-" : "+") + std::to_string(std::abs(exponent));
}

std::optional<std::string> canonical_json(const Node& value) {
  Writer writer;
  if (!writer.write(value)) return {};
  return std::move(writer.out);
}

}  // namespace lanework::ledger
