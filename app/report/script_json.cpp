#include "app/report/script_json.h"

#include "app/draw/foreign_text.h"

namespace lanework::report {
namespace {

void clean(Node& node) {
  node.text = draw::clean_text(node.text, draw::kAnyLength);
  for (Node& item : node.items) clean(item);
  for (auto& [key, value] : node.entries) clean(value);
}

}  // namespace

std::string script_json(const Node& node) {
  Node cleaned = node;
  clean(cleaned);
  std::string out;
  for (const char c : to_json(cleaned)) {
    switch (c) {
      case '<':
        out += "\\u003c";
        break;
      case '>':
        out += "\\u003e";
        break;
      case '&':
        out += "\\u0026";
        break;
      default:
        out += c;
    }
  }
  return out;
}

}  // namespace lanework::report
