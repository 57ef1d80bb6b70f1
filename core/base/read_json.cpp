// JSON by nlohmann's reader, straight into the tree. Stricter than it: each key once, no null, at most 64 levels.
#include <limits>
#include <nlohmann/json.hpp>
#include <set>
#include <utility>

#include "core/base/document.h"

namespace lanework {
namespace {

constexpr std::size_t kMostDepth = 64;
constexpr std::size_t kFewKeys = 16;  // up to here every one is looked at

// The tree as the reader reports it, so that a key that stands twice is a fault.
class TreeBuilder : public nlohmann::json_sax<nlohmann::json> {
 public:
  Node root;
  std::string problem;
  std::size_t problem_at = 0;  // bytes read by then; 0: not a matter of one place

  bool null() override { return fail("null"); }
  bool boolean(bool value) override { return put(Node::make_boolean(value)); }
  bool number_integer(number_integer_t value) override { return put(Node::make_integer(value)); }
  bool number_unsigned(number_unsigned_t value) override {
    constexpr auto kMost = static_cast<number_unsigned_t>(std::numeric_limits<std::int64_t>::max());
    if (value > kMost) return fail("a number that is too large");
    return put(Node::make_integer(static_cast<std::int64_t>(value)));
  }
  bool number_float(number_float_t value, const string_t& /*text*/) override { return put(Node::make_real(value)); }
  // What it hands out may be taken.
  bool string(string_t& value) override { return put(Node::make_text(std::move(value))); }
  bool binary(binary_t& /*value*/) override { return fail("binary data"); }
  bool start_object(std::size_t /*size*/) override { return open(Node::Kind::kTable); }
  bool key(string_t& value) override {
    Level& level = stack_.back();
    if (!is_first(level, value)) return fail("the key " + quote(value) + " twice");
    level.node->entries.emplace_back(std::move(value), Node());
    return true;
  }
  bool end_object() override { return close(); }
  bool start_array(std::size_t /*size*/) override { return open(Node::Kind::kArray); }
  bool end_array() override { return close(); }
  bool parse_error(std::size_t position, const std::string& /*token*/,
                   const nlohmann::json::exception& /*error*/) override {
    problem = "a syntax error";
    problem_at = position;
    return false;
  }

 private:
  struct Level {
    Node* node;
    std::set<std::string, std::less<>> keys;  // of a table, once they are many
  };
  std::vector<Level> stack_;

  bool fail(std::string what) {
    problem = std::move(what);
    return false;
  }

  // A table has its key, and room for the value, by now.
  Node& place() {
    if (stack_.empty()) return root;
    Node& parent = *stack_.back().node;
    return parent.kind == Node::Kind::kArray ? parent.items.emplace_back() : parent.entries.back().second;
  }
  bool put(Node node) {
    place() = std::move(node);
    return true;
  }
  bool open(Node::Kind kind) {
    if (stack_.size() >= kMostDepth) return fail("more than 64 levels of nesting");
    Node& node = place();
    node.kind = kind;
    stack_.push_back({&node, {}});
    return true;
  }
  bool close() {
    stack_.pop_back();
    return true;
  }

  // Whether the table has no such key yet.
  static bool is_first(Level& level, const std::string& key) {
    const auto& entries = level.node->entries;
    if (entries.size() < kFewKeys) return level.node->find(key) == nullptr;
    if (level.keys.empty()) {
      for (const auto& [known, value] : entries) level.keys.insert(known);
    }
    return level.keys.insert(key).second;
  }
};

// Line and column, from 1, of the last byte that was read.
void set_place(Place& place, std::string_view text, std::size_t read) {
  place.line = 1;
  place.column = 1;
  for (const char c : text.substr(0, read - 1)) {
    if (c == '\n') {
      ++place.line;
      place.column = 1;
    } else {
      ++place.column;
    }
  }
}

}  // namespace

Result<Document> parse_json(std::string file, std::string_view text) {
  TreeBuilder builder;
  const bool read = nlohmann::json::sax_parse(text.begin(), text.end(), &builder);
  if (read && builder.root.kind == Node::Kind::kTable) return Document{std::move(file), std::move(builder.root)};
  Place place{std::move(file), 0, 0, {}};
  if (builder.problem_at > 0) set_place(place, text, builder.problem_at);
  const std::string found = read ? "something other than an object" : builder.problem;
  return Fault{FaultCode::kSyntax, std::move(place), found, "a JSON object", {}};
}

}  // namespace lanework
