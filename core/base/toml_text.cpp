#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>

#include "core/base/document.h"

namespace lanework {
namespace {

bool is_bare(const std::string& key) {
  return !key.empty() && std::all_of(key.begin(), key.end(), [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' || c == '_';
  });
}

std::string quoted(const std::string& text) {
  std::string out = "\"";
  for (const char c : text) {
    if (c == '"' || c == '\\') {
      out += {'\\', c};
    } else if (static_cast<unsigned char>(c) < 0x20 || c == 0x7f) {
      std::array<char, 8> escape{};
      std::snprintf(escape.data(), escape.size(), "\\u%04X", static_cast<unsigned>(static_cast<unsigned char>(c)));
      out += escape.data();
    } else {
      out += c;
    }
  }
  return out + "\"";
}

std::string key_text(const std::string& key) { return is_bare(key) ? key : quoted(key); }

// Dates and times of day come out of the tree as text; as text of the same form they read back the same.
bool is_date_or_time(const std::string& text) {
  return parse_iso_date(text).has_value() || (text.size() == 8 && text.substr(5) == ":00" && parse_time_of_day(text));
}

std::string number_text(double value) {
  if (std::isnan(value)) return "nan";
  if (std::isinf(value)) return value < 0 ? "-inf" : "inf";
  Node node;
  node.kind = Node::Kind::kReal;
  node.real = value;
  return to_json(node);
}

std::string value_text(const Node& node);

std::string inline_table(const Node& node) {
  std::string out;
  for (const auto& [key, value] : node.entries) {
    out += (out.empty() ? " " : ", ") + key_text(key) + " = " + value_text(value);
  }
  return "{" + out + (out.empty() ? "}" : " }");
}

std::string inline_array(const Node& node) {
  std::string out;
  for (const Node& item : node.items) out += (out.empty() ? "" : ", ") + value_text(item);
  return "[" + out + "]";
}

std::string value_text(const Node& node) {
  switch (node.kind) {
    case Node::Kind::kText:
      return is_date_or_time(node.text) ? node.text : quoted(node.text);
    case Node::Kind::kInteger:
      return std::to_string(node.integer);
    case Node::Kind::kReal:
      return number_text(node.real);
    case Node::Kind::kBoolean:
      return node.boolean ? "true" : "false";
    case Node::Kind::kArray:
      return inline_array(node);
    case Node::Kind::kTable:
      return inline_table(node);
  }
  return {};
}

bool is_list_of_tables(const Node& node) {
  return node.kind == Node::Kind::kArray && !node.items.empty() &&
         std::all_of(node.items.begin(), node.items.end(),
                     [](const Node& item) { return item.kind == Node::Kind::kTable; });
}

void add_lines(const Node& table, std::string& out) {
  for (const auto& [key, value] : table.entries) out += key_text(key) + " = " + value_text(value) + "\n";
}

}  // namespace

std::string to_toml(const Node& root) {
  std::string out;
  const auto stands_apart = [](const Node& node) { return node.kind == Node::Kind::kTable || is_list_of_tables(node); };
  for (const auto& [key, value] : root.entries) {
    if (!stands_apart(value)) out += key_text(key) + " = " + value_text(value) + "\n";
  }
  const auto heading = [&out](const std::string& text) { out += (out.empty() ? "" : "\n") + text + "\n"; };
  for (const auto& [key, value] : root.entries) {
    if (!stands_apart(value)) continue;
    if (value.kind == Node::Kind::kTable) {
      heading("[" + key_text(key) + "]");
      add_lines(value, out);
      continue;
    }
    for (const Node& item : value.items) {
      heading("[[" + key_text(key) + "]]");
      add_lines(item, out);
    }
  }
  return out;
}

}  // namespace lanework
