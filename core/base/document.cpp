#include "core/base/document.h"

#include <limits>
#include <nlohmann/json.hpp>

namespace lanework {
namespace {

void write_json(const Node& node, nlohmann::ordered_json& out) {
  switch (node.kind) {
    case Node::Kind::kTable:
      out = nlohmann::ordered_json::object();
      for (const auto& [key, value] : node.entries) write_json(value, out[key]);
      return;
    case Node::Kind::kArray:
      out = nlohmann::ordered_json::array();
      for (const Node& item : node.items) {
        out.push_back(nullptr);
        write_json(item, out.back());
      }
      return;
    case Node::Kind::kText:
      out = node.text;
      return;
    case Node::Kind::kInteger:
      out = node.integer;
      return;
    case Node::Kind::kReal:
      out = node.real;
      return;
    case Node::Kind::kBoolean:
      out = node.boolean;
      return;
  }
}

// Builds the tree as the JSON parser reports it, so that a key that stands twice is a fault.
class TreeBuilder : public nlohmann::json_sax<nlohmann::json> {
 public:
  Node root;
  std::string problem;
  std::size_t problem_at = 0;
  static constexpr std::size_t kMostDepth = 64;

  bool null() override { return fail("null"); }
  bool boolean(bool value) override { return put(Node::make_boolean(value)); }
  bool number_integer(number_integer_t value) override { return put(Node::make_integer(value)); }
  bool number_unsigned(number_unsigned_t value) override {
    constexpr auto kMost = static_cast<number_unsigned_t>(std::numeric_limits<std::int64_t>::max());
    if (value > kMost) return fail("a number that is too large");
    return put(Node::make_integer(static_cast<std::int64_t>(value)));
  }
  bool number_float(number_float_t value, const string_t& /*text*/) override {
    Node node;
    node.kind = Node::Kind::kReal;
    node.real = value;
    return put(std::move(node));
  }
  bool string(string_t& value) override { return put(Node::make_text(value)); }
  bool binary(binary_t& /*value*/) override { return fail("binary data"); }
  bool start_object(std::size_t /*size*/) override { return open(Node::make_table()); }
  bool key(string_t& value) override {
    if (stack_.back()->find(value) != nullptr) return fail("the key " + quote(value) + " twice");
    keys_.back() = value;
    return true;
  }
  bool end_object() override { return close(); }
  bool start_array(std::size_t /*size*/) override { return open(Node::make_array()); }
  bool end_array() override { return close(); }
  bool parse_error(std::size_t position, const std::string& /*token*/,
                   const nlohmann::json::exception& /*error*/) override {
    problem = "a syntax error";
    problem_at = position;
    return false;
  }

 private:
  std::vector<Node*> stack_;
  std::vector<std::string> keys_;

  bool fail(std::string what) {
    problem = std::move(what);
    return false;
  }
  Node* attach(Node node) {
    if (stack_.empty()) {
      root = std::move(node);
      return &root;
    }
    Node& parent = *stack_.back();
    if (parent.kind == Node::Kind::kArray) {
      parent.items.push_back(std::move(node));
      return &parent.items.back();
    }
    parent.entries.emplace_back(keys_.back(), std::move(node));
    return &parent.entries.back().second;
  }
  bool put(Node node) {
    attach(std::move(node));
    return true;
  }
  bool open(Node node) {
    if (stack_.size() >= kMostDepth) return fail("more than 64 levels of nesting");
    stack_.push_back(attach(std::move(node)));
    keys_.emplace_back();
    return true;
  }
  bool close() {
    stack_.pop_back();
    keys_.pop_back();
    return true;
  }
};

}  // namespace

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

Result<Document> parse_json(std::string file, std::string_view text) {
  TreeBuilder builder;
  const bool ok = nlohmann::json::sax_parse(text.begin(), text.end(), &builder);
  if (ok && builder.root.kind == Node::Kind::kTable) return Document{std::move(file), std::move(builder.root)};
  Place place{std::move(file), 0, 0, {}};
  if (builder.problem_at > 0) {
    const std::string_view before = text.substr(0, builder.problem_at - 1);
    place.line = 1;
    place.column = 1;
    for (const char c : before) {
      if (c == '\n') {
        ++place.line;
        place.column = 1;
      } else {
        ++place.column;
      }
    }
  }
  const std::string found = ok ? "something other than an object" : builder.problem;
  return Fault{FaultCode::kSyntax, std::move(place), found, "a JSON object", {}};
}

std::string to_json(const Node& node, int indent) {
  nlohmann::ordered_json out;
  write_json(node, out);
  return out.dump(indent, ' ', false, nlohmann::ordered_json::error_handler_t::replace);
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
