#include "app/report/script_json.h"

#include "app/draw/foreign_text.h"

namespace lanework::report {

void clean_texts(Node& node) {
  node.text = draw::clean_text(node.text, draw::kAnyLength);
  for (Node& item : node.items) clean_texts(item);
  for (auto& [key, value] : node.entries) clean_texts(value);
}

std::string script_json(const Node& node) {
  Node cleaned = node;
  clean_texts(cleaned);
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
