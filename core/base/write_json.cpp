// The tree as JSON text.
#include <array>
#include <charconv>
#include <nlohmann/json.hpp>

#include "core/base/document.h"

namespace lanework {
namespace {

constexpr std::string_view kShort = "\"\\\b\f\n\r\t";
constexpr std::string_view kLetter = "\"\\bfnrt";

constexpr std::array<bool, 256> plain_bytes() {
  std::array<bool, 256> out{};
  for (std::size_t i = 0x20; i < 0x80; ++i) out[i] = i != '"' && i != '\\';
  return out;
}
constexpr std::array<bool, 256> kPlain = plain_bytes();

class JsonWriter {
 public:
  explicit JsonWriter(int indent) : indent_(indent) {}

  void write(const Node& node) {
    switch (node.kind) {
      case Node::Kind::kTable:
        open('{');
        for (const auto& [key, value] : node.entries) {
          next(&value != &node.entries.front().second);
          write_text(key);
          out += indent_ < 0 ? ":" : ": ";
          write(value);
        }
        close('}', node.entries.empty());
        return;
      case Node::Kind::kArray:
        open('[');
        for (const Node& item : node.items) {
          next(&item != &node.items.front());
          write(item);
        }
        close(']', node.items.empty());
        return;
      case Node::Kind::kText:
        write_text(node.text);
        return;
      case Node::Kind::kInteger:
        write_integer(node.integer);
        return;
      case Node::Kind::kReal:
        out += nlohmann::json(node.real).dump();
        return;
      case Node::Kind::kBoolean:
        out += node.boolean ? "true" : "false";
        return;
    }
  }

  std::string out;

 private:
  int indent_;
  std::size_t depth_ = 0;

  void open(char bracket) {
    out += bracket;
    ++depth_;
  }
  void next(bool after_another) {
    if (after_another) out += ',';
    break_line();
  }
  void close(char bracket, bool empty) {
    --depth_;
    if (!empty) break_line();
    out += bracket;
  }
  void break_line() {
    if (indent_ < 0) return;
    out += '\n';
    out.append(depth_ * static_cast<std::size_t>(indent_), ' ');
  }

  void write_integer(std::int64_t value) {
    std::array<char, 24> digits{};
    const auto written = std::to_chars(digits.data(), digits.data() + digits.size(), value);
    out.append(digits.data(), written.ptr);
  }

  void write_text(const std::string& text) {
    const std::size_t before = out.size();
    out += '"';
    const char* at = text.data();
    const char* const end = at + text.size();
    while (at != end) {
      const char* const from = at;
      while (at != end && kPlain[static_cast<unsigned char>(*at)]) ++at;
      out.append(from, at);
      if (at == end) break;
      if (static_cast<unsigned char>(*at) >= 0x80) {
        // Which bytes are no UTF-8 and what stands in their place is not worked out twice.
        out.resize(before);
        out += nlohmann::json(text).dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
        return;
      }
      write_escaped(*at++);
    }
    out += '"';
  }

  void write_escaped(char c) {
    static constexpr std::string_view kDigits = "0123456789abcdef";
    out += '\\';
    if (const std::size_t which = kShort.find(c); which != std::string_view::npos) {
      out += kLetter[which];
      return;
    }
    out += "u00";
    out += kDigits[static_cast<unsigned char>(c) >> 4];
    out += kDigits[static_cast<unsigned char>(c) & 15U];
  }
};

}  // namespace

std::string to_json(const Node& node, int indent) {
  JsonWriter writer(indent);
  writer.write(node);
  return std::move(writer.out);
}

}  // namespace lanework
