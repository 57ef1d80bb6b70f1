// A reason as the door tells it beside its sentence: a code, and its values written one after the other.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/base/document.h"
#include "core/catalogue/catalogue.h"

namespace lanework::door {

class Coded {
 public:
  explicit Coded(const char* code) : node_(Node::make_table()) { node_.set("code", Node::make_text(code)); }
  Coded& with(const char* key, std::int64_t value) {
    node_.set(key, Node::make_integer(value));
    return *this;
  }
  Coded& with(const char* key, std::string_view value) {
    node_.set(key, Node::make_text(std::string(value)));
    return *this;
  }
  Coded& with(const char* key, std::optional<int> value) {
    if (value) node_.set(key, Node::make_integer(*value));
    return *this;
  }
  Coded& with(const char* key, Node value) {
    node_.set(key, std::move(value));
    return *this;
  }
  Coded& where(const char* key, bool value) {
    node_.set(key, Node::make_boolean(value));
    return *this;
  }
  Node done() { return std::move(node_); }

 private:
  Node node_;
};

// Drills of the catalogue by their ids.
inline Node ids_node(const catalogue::Catalogue& catalogue, const std::vector<int>& drills) {
  Node out = Node::make_array();
  for (const int drill : drills)
    out.items.push_back(Node::make_text(catalogue.drills[static_cast<std::size_t>(drill)].id));
  return out;
}

}  // namespace lanework::door
