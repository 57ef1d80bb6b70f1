// The tree as JSON text.
#include <algorithm>
#include <array>
#include <charconv>
#include <nlohmann/json.hpp>

#include "core/base/document.h"

namespace lanework {
namespace {

// Stands in a text as it is.
bool is_plain(char c) { return c >= 0x20 && c < 0x7F && c != '"' && c != '\\'; }

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

  // Escapes, and what stands in the place of bytes that are no UTF-8, are the library's.
  void write_text(const std::string& text) {
    if (!std::all_of(text.begin(), text.end(), is_plain)) {
      out += nlohmann::json(text).dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
      return;
    }
    out += '"';
    out += text;
    out += '"';
  }
};

}  // namespace

std::string to_json(const Node& node, int indent) {
  JsonWriter writer(indent);
  writer.write(node);
  return std::move(writer.out);
}

}  // namespace lanework
