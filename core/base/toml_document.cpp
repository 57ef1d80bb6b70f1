// The only place that includes toml++: TOML text to the neutral tree.
namespace lanework {
struct BrokenAssertion {};
[[noreturn]] static void break_assertion() { throw BrokenAssertion{}; }
}  // namespace lanework
// toml++ 3.3 asserts where it should tell a fault ('[=]' stops the program), and calls the same unreachable where
// assertions are off. So they stay on, throw, and end in a fault.
#undef NDEBUG
#define TOML_ASSERT(condition) ((condition) ? static_cast<void>(0) : ::lanework::break_assertion())
#define TOML_EXCEPTIONS 0
#define TOML_ENABLE_FORMATTERS 0
#define TOML_MAX_NESTED_VALUES 32
#include <toml++/toml.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <optional>

#include "core/base/document.h"

namespace lanework {
namespace {

std::string iso(const toml::date& d) {
  std::array<char, 32> text{};
  std::snprintf(text.data(), text.size(), "%04d-%02d-%02d", d.year, d.month, d.day);
  return text.data();
}

std::string iso(const toml::time& t) {
  std::array<char, 32> text{};
  std::snprintf(text.data(), text.size(), "%02d:%02d:%02d", t.hour, t.minute, t.second);
  return text.data();
}

Node convert(const toml::node& from) {
  Node node;
  node.line = static_cast<int>(from.source().begin.line);
  node.column = static_cast<int>(from.source().begin.column);
  switch (from.type()) {
    case toml::node_type::table:
      node.kind = Node::Kind::kTable;
      for (auto&& [key, value] : *from.as_table()) {
        Node child = convert(value);
        child.line = static_cast<int>(key.source().begin.line);
        child.column = static_cast<int>(key.source().begin.column);
        node.entries.emplace_back(std::string(key.str()), std::move(child));
      }
      break;
    case toml::node_type::array:
      node.kind = Node::Kind::kArray;
      for (auto&& item : *from.as_array()) node.items.push_back(convert(item));
      break;
    case toml::node_type::string:
      node.kind = Node::Kind::kText;
      node.text = from.as_string()->get();
      break;
    case toml::node_type::integer:
      node.kind = Node::Kind::kInteger;
      node.integer = from.as_integer()->get();
      break;
    case toml::node_type::floating_point:
      node.kind = Node::Kind::kReal;
      node.real = from.as_floating_point()->get();
      break;
    case toml::node_type::boolean:
      node.kind = Node::Kind::kBoolean;
      node.boolean = from.as_boolean()->get();
      break;
    case toml::node_type::date:
      node.kind = Node::Kind::kText;
      node.text = iso(from.as_date()->get());
      break;
    case toml::node_type::time:
      node.kind = Node::Kind::kText;
      node.text = iso(from.as_time()->get());
      break;
    case toml::node_type::date_time: {
      const toml::date_time& both = from.as_date_time()->get();
      node.kind = Node::Kind::kText;
      node.text = iso(both.date) + "T" + iso(both.time);
      break;
    }
    default:
      break;
  }
  return node;
}

// The end of the text in quotation marks that starts here, or of its line.
std::size_t end_of_quoted(std::string_view text, std::size_t start) {
  std::size_t i = start + 1;
  while (i < text.size() && text[i] != text[start] && text[i] != '\n') {
    i += text[start] == '"' && text[i] == '\\' ? 2U : 1U;
  }
  return i;
}

// Line of the first dotted key of more parts than any file has: thousands of parts would nest as many tables,
// and taking those apart overflows the stack. 0: none.
int line_of_endless_key(std::string_view text) {
  constexpr int kMostParts = 16;
  int line = 1;
  int parts = 1;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] == '"' || text[i] == '\'') i = end_of_quoted(text, i);
    if (i < text.size() && text[i] == '#') i = text.find('\n', i);
    if (i >= text.size()) break;
    if (text[i] == '.' && ++parts > kMostParts) return line;
    if (std::string_view("=,[]{}:+\n").find(text[i]) != std::string_view::npos) parts = 1;
    if (text[i] == '\n') ++line;
  }
  return 0;
}

// Empty where the parser broke one of its own assertions.
std::optional<toml::parse_result> parse_guarded(std::string_view text) {
  try {
    return toml::parse(text);
  } catch (const BrokenAssertion&) {
    return {};
  }
}

// The first line that the parser breaks on: lines before it can be read without.
Fault broken_line(std::string file, std::string_view text) {
  std::vector<std::size_t> ends;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] == '\n') ends.push_back(i);
  }
  ends.push_back(text.size());
  const auto holds = [&text](std::size_t end) { return parse_guarded(text.substr(0, end)).has_value(); };
  const auto broken = std::min(std::partition_point(ends.begin(), ends.end(), holds), ends.end() - 1);
  const std::size_t start = broken == ends.begin() ? 0 : *(broken - 1) + 1;
  Place place{std::move(file), static_cast<int>(broken - ends.begin()) + 1, 0, {}};
  return {FaultCode::kSyntax,
          std::move(place),
          quote(std::string(text.substr(start, *broken - start))),
          "a key, a [table] or a comment of a TOML file",
          {}};
}

}  // namespace

Result<Document> parse_toml(std::string file, std::string_view text) {
  if (const int line = line_of_endless_key(text); line > 0) {
    return Fault{FaultCode::kSyntax, {std::move(file), line, 0, {}}, "a key of more than 16 parts", "a TOML file", {}};
  }
  const std::optional<toml::parse_result> guarded = parse_guarded(text);
  if (!guarded) return broken_line(std::move(file), text);
  const toml::parse_result& parsed = *guarded;
  if (!parsed) {
    const toml::parse_error& error = parsed.error();
    Place place{std::move(file),
                static_cast<int>(error.source().begin.line),
                static_cast<int>(error.source().begin.column),
                {}};
    return Fault{FaultCode::kSyntax, std::move(place), std::string(error.description()), "a TOML file", {}};
  }
  Document document{std::move(file), convert(parsed.table())};
  return document;
}

}  // namespace lanework
