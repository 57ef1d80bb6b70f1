#include "app/store/archive/records.h"

#include <sodium.h>

#include <array>

#include "core/base/document.h"
#include "core/ledger/canonical.h"

namespace lanework::store::archive {
namespace {

constexpr std::array<const char*, 4> kKinds = {"null", "whole", "text", "bytes"};

std::string number_bytes(std::uint64_t number, int count) {
  std::string out;
  for (int i = 0; i < count; ++i) out += static_cast<char>(number >> (8 * i) & 0xFFU);
  return out;
}

// Takes from the front; false where it is too short.
bool take_number(std::string_view& bytes, std::size_t count, std::uint64_t& out) {
  if (bytes.size() < count) return false;
  out = 0;
  for (std::size_t i = 0; i < count; ++i) {
    out |= static_cast<std::uint64_t>(static_cast<unsigned char>(bytes[i])) << (8 * i);
  }
  bytes.remove_prefix(count);
  return true;
}

bool take_cell(std::string_view& bytes, Cell& cell) {
  std::uint64_t kind = 0;
  std::uint64_t number = 0;
  if (!take_number(bytes, 1, kind) || kind >= kKinds.size()) return false;
  cell.kind = static_cast<Cell::Kind>(kind);
  if (cell.kind == Cell::Kind::kNull) return true;
  if (!take_number(bytes, cell.kind == Cell::Kind::kWhole ? 8 : 4, number)) return false;
  if (cell.kind == Cell::Kind::kWhole) {
    cell.whole = static_cast<std::int64_t>(number);
    return true;
  }
  if (bytes.size() < number) return false;
  cell.bytes = bytes.substr(0, number);
  bytes.remove_prefix(number);
  return true;
}

std::string canonical(const Node& node) { return ledger::canonical_json(node).value_or(std::string()); }

std::optional<Node> json_of(const std::string& payload) {
  auto document = parse_json("backup", payload);
  if (!document) return {};
  return std::move(document).value().root;
}

const Node* member(const Node& table, const char* key, Node::Kind kind) {
  const Node* found = table.find(key);
  return found != nullptr && found->kind == kind ? found : nullptr;
}

Node manifest_node(const Manifest& manifest) {
  Node rows = Node::make_table();
  for (const auto& [table, count] : manifest.rows) rows.set(table, Node::make_integer(count));
  Node out = Node::make_table();
  out.set("rows", std::move(rows));
  out.set("last_receipt", Node::make_integer(manifest.head.receipt));
  out.set("last_link", Node::make_text(hex_of(link_text(manifest.head.link))));
  out.set("digest", Node::make_text(hex_of(manifest.digest)));
  return out;
}

}  // namespace

std::string record_bytes(RecordKind kind, const std::string& payload) {
  return static_cast<char>(kind) + number_bytes(payload.size(), 4) + payload;
}

std::string header_text(const Header& header) {
  Node out = Node::make_table();
  out.set("form", Node::make_integer(header.form));
  out.set("database", Node::make_text(header.database));
  out.set("made", Node::make_text(header.made));
  return canonical(out);
}

std::string table_text(const Table& table) {
  Node columns = Node::make_array();
  for (const Column& column : table.columns) {
    Node one = Node::make_table();
    one.set("name", Node::make_text(column.name));
    one.set("kind", Node::make_text(kKinds.at(static_cast<std::size_t>(column.kind))));
    columns.items.push_back(std::move(one));
  }
  Node out = Node::make_table();
  out.set("table", Node::make_text(table.name));
  out.set("columns", std::move(columns));
  return canonical(out);
}

std::string row_text(const Cells& cells) {
  std::string out;
  for (const Cell& cell : cells) {
    out += static_cast<char>(cell.kind);
    if (cell.kind == Cell::Kind::kWhole) out += number_bytes(static_cast<std::uint64_t>(cell.whole), 8);
    if (cell.kind == Cell::Kind::kText || cell.kind == Cell::Kind::kBytes) {
      out += number_bytes(cell.bytes.size(), 4) + cell.bytes;
    }
  }
  return out;
}

std::string manifest_text(const Manifest& manifest) {
  Node out = manifest_node(manifest);
  out.set("witness", Node::make_text(hex_of(manifest.witness)));
  return canonical(out);
}

std::optional<Header> header_of(const std::string& payload) {
  const auto json = json_of(payload);
  if (!json) return {};
  const Node* form = member(*json, "form", Node::Kind::kInteger);
  const Node* database = member(*json, "database", Node::Kind::kText);
  const Node* made = member(*json, "made", Node::Kind::kText);
  if (form == nullptr || database == nullptr || made == nullptr) return {};
  return Header{static_cast<int>(form->integer), database->text, made->text};
}

std::optional<Table> table_of(const std::string& payload) {
  const auto json = json_of(payload);
  if (!json) return {};
  const Node* name = member(*json, "table", Node::Kind::kText);
  const Node* columns = member(*json, "columns", Node::Kind::kArray);
  if (name == nullptr || columns == nullptr) return {};
  Table out;
  out.name = name->text;
  for (const Node& column : columns->items) {
    const Node* heading = member(column, "name", Node::Kind::kText);
    const Node* word = member(column, "kind", Node::Kind::kText);
    std::size_t kind = 1;
    while (kind < kKinds.size() && word != nullptr && word->text != kKinds.at(kind)) ++kind;
    if (heading == nullptr || word == nullptr || kind == kKinds.size()) return {};
    out.columns.push_back({heading->text, static_cast<Cell::Kind>(kind)});
  }
  return out;
}

std::optional<Cells> row_of(const Table& table, const std::string& payload) {
  std::string_view bytes = payload;
  Cells out(table.columns.size());
  for (std::size_t i = 0; i < out.size(); ++i) {
    if (!take_cell(bytes, out[i])) return {};
    if (out[i].kind != Cell::Kind::kNull && out[i].kind != table.columns[i].kind) return {};
  }
  if (!bytes.empty()) return {};
  return out;
}

std::optional<Manifest> manifest_of(const std::string& payload) {
  const auto json = json_of(payload);
  if (!json) return {};
  const Node* rows = member(*json, "rows", Node::Kind::kTable);
  const Node* receipt = member(*json, "last_receipt", Node::Kind::kInteger);
  if (rows == nullptr || receipt == nullptr) return {};
  Manifest out;
  for (const auto& [table, count] : rows->entries) out.rows[table] = count.integer;
  out.head.receipt = receipt->integer;
  std::array<std::string, 3> digests;
  constexpr std::array<const char*, 3> kNames = {"last_link", "digest", "witness"};
  for (std::size_t i = 0; i < kNames.size(); ++i) {
    const Node* text = member(*json, kNames.at(i), Node::Kind::kText);
    const auto bytes = text == nullptr ? std::nullopt : bytes_of_hex(text->text);
    if (!bytes || bytes->size() != kDigestBytes) return {};
    digests.at(i) = *bytes;
  }
  out.head.link = link_of(digests[0]);
  out.digest = digests[1];
  out.witness = digests[2];
  return out;
}

std::string witness_of(const Key& key, const Header& header, const Manifest& manifest) {
  const std::string said = "backup " + header_text(header) + canonical(manifest_node(manifest));
  std::string out(kDigestBytes, '\0');
  crypto_generichash(reinterpret_cast<unsigned char*>(out.data()), out.size(),
                     reinterpret_cast<const unsigned char*>(said.data()), said.size(), key.bytes().data(),
                     key.bytes().size());
  return out;
}

std::string hex_of(const std::string& bytes) {
  std::string out(bytes.size() * 2 + 1, '\0');
  sodium_bin2hex(out.data(), out.size(), reinterpret_cast<const unsigned char*>(bytes.data()), bytes.size());
  out.pop_back();
  return out;
}

std::optional<std::string> bytes_of_hex(const std::string& hex) {
  std::string out(hex.size() / 2, '\0');
  std::size_t length = 0;
  const int failed = sodium_hex2bin(reinterpret_cast<unsigned char*>(out.data()), out.size(), hex.data(), hex.size(),
                                    nullptr, &length, nullptr);
  if (failed != 0 || length * 2 != hex.size()) return {};
  return out;
}

}  // namespace lanework::store::archive
