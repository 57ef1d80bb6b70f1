// Changes to a document by dotted path, so that a test says in one line what the user got wrong.
#pragma once

#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/document.h"

namespace lanework::catalogue::test {

inline std::vector<std::string> split_path(const std::string& path) {
  std::vector<std::string> out;
  std::size_t from = 0;
  while (true) {
    const std::size_t dot = path.find('.', from);
    out.push_back(path.substr(from, dot - from));
    if (dot == std::string::npos) return out;
    from = dot + 1;
  }
}

// The node at 'rung.1.key': keys of tables, positions from 1 in lists.
inline Node& node_at(Node& root, const std::string& path) {
  Node* node = &root;
  for (const std::string& step : split_path(path)) {
    if (node->kind == Node::Kind::kArray) {
      node = &node->items.at(std::stoul(step) - 1);
      continue;
    }
    const Node* next = node->find(step);
    if (next == nullptr) throw std::out_of_range("no " + path);
    node = const_cast<Node*>(next);  // the document is ours
  }
  return *node;
}

inline Node& parent_of(Node& root, const std::string& path) {
  const std::size_t dot = path.rfind('.');
  return dot == std::string::npos ? root : node_at(root, path.substr(0, dot));
}
inline std::string last_step(const std::string& path) { return path.substr(path.rfind('.') + 1); }

inline void set(Document& document, const std::string& path, Node value) {
  Node& parent = parent_of(document.root, path);
  const Node* old = parent.find(last_step(path));
  value.line = old != nullptr ? old->line : parent.line;
  value.column = old != nullptr ? old->column : parent.column;
  parent.set(last_step(path), std::move(value));
}
inline void set(Document& document, const std::string& path, const char* text) {
  set(document, path, Node::make_text(text));
}
inline void set(Document& document, const std::string& path, int value) {
  set(document, path, Node::make_integer(value));
}
inline void set(Document& document, const std::string& path, bool value) {
  set(document, path, Node::make_boolean(value));
}
inline void set_real(Document& document, const std::string& path, double value) {
  Node node;
  node.kind = Node::Kind::kReal;
  node.real = value;
  set(document, path, node);
}
inline void set_list(Document& document, const std::string& path, const std::vector<std::string>& texts) {
  Node list = Node::make_array();
  for (const std::string& text : texts) list.items.push_back(Node::make_text(text));
  set(document, path, list);
}
inline void set_text_item(Document& document, const std::string& path, const char* text) {
  node_at(document.root, path) = Node::make_text(text);
}

inline void remove(Document& document, const std::string& path) {
  Node& parent = parent_of(document.root, path);
  const std::string step = last_step(path);
  if (parent.kind == Node::Kind::kArray) {
    parent.items.erase(parent.items.begin() + static_cast<std::ptrdiff_t>(std::stoul(step) - 1));
    return;
  }
  for (std::size_t i = 0; i < parent.entries.size(); ++i) {
    if (parent.entries[i].first == step) parent.entries.erase(parent.entries.begin() + static_cast<std::ptrdiff_t>(i));
  }
}

inline Node copy_of(Document document, const std::string& path) { return node_at(document.root, path); }

// A second copy of a list's item at its end.
inline void repeat_item(Document& document, const std::string& path, std::size_t position) {
  Node& list = node_at(document.root, path);
  list.items.push_back(list.items.at(position - 1));
}

}  // namespace lanework::catalogue::test
