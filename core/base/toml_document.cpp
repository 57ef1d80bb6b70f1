// The only place that includes toml++: TOML text to the neutral tree.
#define TOML_EXCEPTIONS 0
#define TOML_ENABLE_FORMATTERS 0
#include <toml++/toml.h>

#include <array>
#include <cstdio>

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

}  // namespace

Result<Document> parse_toml(std::string file, std::string_view text) {
  const toml::parse_result parsed = toml::parse(text);
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
