#include "app/read/table_package.h"

#include <cctype>

#include "core/base/document.h"

namespace lanework::read {
namespace {

std::string as_name(const std::string& text) {
  std::string out;
  for (const char c : text) {
    const auto letter = static_cast<unsigned char>(c);
    if (letter < 0x80 && std::isalnum(letter) != 0) {
      out += static_cast<char>(std::tolower(letter));
    } else if (!out.empty() && out.back() != '-') {
      out += '-';
    }
  }
  while (!out.empty() && out.back() == '-') out.pop_back();
  return out.empty() ? "club" : out;
}

Node field_node(const TableColumn& column) {
  Node out = Node::make_table();
  out.set("name", Node::make_text(column.name));
  out.set("type", Node::make_text(column.type));
  if (!column.format.empty()) out.set("format", Node::make_text(column.format));
  out.set("description", Node::make_text(column.description));
  if (column.required) {
    Node constraints = Node::make_table();
    constraints.set("required", Node::make_boolean(true));
    out.set("constraints", std::move(constraints));
  }
  return out;
}

Node resource_node(const PackagedTable& table) {
  Node fields = Node::make_array();
  for (const TableColumn& column : table.columns) fields.items.push_back(field_node(column));
  Node missing = Node::make_array();
  missing.items.push_back(Node::make_text(""));
  Node schema = Node::make_table();
  schema.set("fields", std::move(fields));
  schema.set("missingValues", std::move(missing));
  Node out = Node::make_table();
  out.set("name", Node::make_text(table.name));
  out.set("path", Node::make_text(table.name + ".csv"));
  out.set("profile", Node::make_text("tabular-data-resource"));
  out.set("format", Node::make_text("csv"));
  out.set("mediatype", Node::make_text("text/csv"));
  out.set("encoding", Node::make_text("utf-8"));
  out.set("description", Node::make_text(table.description));
  out.set("schema", std::move(schema));
  return out;
}

}  // namespace

std::string package_descriptor(const TablePackage& package) {
  Node resources = Node::make_array();
  for (const PackagedTable& table : package.tables) resources.items.push_back(resource_node(table));
  Node out = Node::make_table();
  out.set("name", Node::make_text(as_name(package.club) + "-" + package.what));
  out.set("title", Node::make_text(package.title));
  if (!package.description.empty()) out.set("description", Node::make_text(package.description));
  out.set("profile", Node::make_text("tabular-data-package"));
  out.set("resources", std::move(resources));
  return to_json(out, 2) + "\n";
}

}  // namespace lanework::read
