#include "core/care/entries/read_cautiously.h"

#include <algorithm>
#include <initializer_list>
#include <iterator>
#include <string_view>
#include <utility>

#include "core/care/entries/read_entries.h"

namespace lanework::care {
namespace {

Result<std::vector<Entry>> read_one(const Node& row, const ReturnRules& rules) {
  Document document{"ledger", Node::make_table()};
  Node list = Node::make_array();
  list.items.push_back(row);
  document.root.set("entry", std::move(list));
  return read_entries(document, rules, {});
}

Node only(const Node& row, std::initializer_list<std::string_view> keys) {
  Node out = Node::make_table();
  for (const auto& [key, value] : row.entries) {
    if (std::find(keys.begin(), keys.end(), key) != keys.end()) out.set(key, value);
  }
  return out;
}

bool adds_caution(const Node& row) {
  constexpr std::string_view kKinds[] = {"hurt", "soreness", "restriction", "course-opened", "stepped-back"};
  const Node* kind = row.find("kind");
  return kind != nullptr && std::find(std::begin(kKinds), std::end(kKinds), kind->text) != std::end(kKinds);
}

}  // namespace

std::vector<Entry> read_cautiously(const Node& document, const ReturnRules& rules) {
  std::vector<Entry> out;
  const Node* list = document.find("entry");
  if (list == nullptr) return out;
  for (const Node& row : list->items) {
    auto read = read_one(row, rules);
    if (!read) {
      if (!adds_caution(row)) continue;
      Node plain = only(row, {"id", "device_time", "player", "receipt", "received", "by", "role"});
      plain.set("kind", Node::make_text("hurt"));
      read = read_one(plain, rules);
    }
    if (read) std::move(read.value().begin(), read.value().end(), std::back_inserter(out));
  }
  return out;
}

}  // namespace lanework::care
