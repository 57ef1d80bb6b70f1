#include "core/base/document.h"

namespace lanework {
Node::Node() = default;
Node::~Node() = default;
Node::Node(const Node&) = default;
Node::Node(Node&&) noexcept = default;
Node& Node::operator=(const Node&) = default;
Node& Node::operator=(Node&&) noexcept = default;

const Node* Node::find(std::string_view key) const {
  for (const auto& [name, value] : entries) {
    if (name == key) return &value;
  }
  return nullptr;
}

Node Node::make_text(std::string value) {
  Node node;
  node.kind = Kind::kText;
  node.text = std::move(value);
  return node;
}
Node Node::make_integer(std::int64_t value) {
  Node node;
  node.kind = Kind::kInteger;
  node.integer = value;
  return node;
}
Node Node::make_real(double value) {
  Node node;
  node.kind = Kind::kReal;
  node.real = value;
  return node;
}
Node Node::make_boolean(bool value) {
  Node node;
  node.kind = Kind::kBoolean;
  node.boolean = value;
  return node;
}
Node Node::make_array() {
  Node node;
  node.kind = Kind::kArray;
  return node;
}
Node Node::make_table() { return Node{}; }

Node& Node::set(std::string key, Node value) {
  for (auto& [name, old] : entries) {
    if (name == key) {
      old = std::move(value);
      return old;
    }
  }
  entries.emplace_back(std::move(key), std::move(value));
  return entries.back().second;
}

const char* kind_in_words(Node::Kind kind) {
  switch (kind) {
    case Node::Kind::kTable:
      return "a table";
    case Node::Kind::kArray:
      return "a list";
    case Node::Kind::kText:
      return "text";
    case Node::Kind::kInteger:
      return "a whole number";
    case Node::Kind::kReal:
      return "a number with decimals";
    case Node::Kind::kBoolean:
      return "true or false";
  }
  return "";
}

std::string found_in_words(const Node& node) {
  switch (node.kind) {
    case Node::Kind::kText:
      return quote(node.text);
    case Node::Kind::kInteger:
      return std::to_string(node.integer);
    case Node::Kind::kReal:
      return to_json(node);
    case Node::Kind::kBoolean:
      return node.boolean ? "true" : "false";
    default:
      return kind_in_words(node.kind);
  }
}

}  // namespace lanework
