#include "app/cli/document_edits.h"

namespace lanework::cli {

Node* kept_or_put(Node& parent, const std::string& key, Node made) {
  for (auto& [name, value] : parent.entries) {
    if (name == key) return value.kind == made.kind ? &value : nullptr;
  }
  return &parent.set(key, std::move(made));
}

void set_in(Node& root, const std::string& table, const std::string& key, Node value) {
  if (Node* node = kept_or_put(root, table, Node::make_table())) node->set(key, std::move(value));
}

void add_to(Node& parent, const std::string& key, Node value) {
  if (Node* list = kept_or_put(parent, key, Node::make_array())) list->items.push_back(std::move(value));
}

}  // namespace lanework::cli
