// The records of a backup, as bytes: docs/formats/backup.md. One header, each table followed by its rows, one manifest.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>

#include "app/store/archive/tables.h"
#include "app/store/books.h"

namespace lanework::store::archive {

enum class RecordKind : char { kHeader = 'h', kTable = 't', kRow = 'r', kManifest = 'm' };

struct Record {
  RecordKind kind = RecordKind::kRow;
  std::string payload;
};

inline constexpr std::size_t kRecordPrefixBytes = 5;       // the kind, and the payload's length
inline constexpr std::size_t kLongestRecord = 16U << 20U;  // of a payload

struct Header {
  int form = 0;
  std::string database;
  std::string made;  // '2026-11-26T18:05:00+01:00'
};

struct Manifest {
  std::map<std::string, std::int64_t> rows;  // by table
  LastRow head;
  std::string digest;   // over all records of tables and rows
  std::string witness;  // over header and manifest, under the store's key: whoever has only the public key forges none
};

std::string record_bytes(RecordKind kind, const std::string& payload);
std::string header_text(const Header& header);
std::string table_text(const Table& table);
std::string row_text(const Cells& cells);
std::string manifest_text(const Manifest& manifest);

// Empty where the payload is not of that form.
std::optional<Header> header_of(const std::string& payload);
std::optional<Table> table_of(const std::string& payload);  // name and columns
std::optional<Cells> row_of(const Table& table, const std::string& payload);
std::optional<Manifest> manifest_of(const std::string& payload);

std::string witness_of(const Key& key, const Header& header, const Manifest& manifest);

std::string hex_of(const std::string& bytes);
std::optional<std::string> bytes_of_hex(const std::string& hex);

}  // namespace lanework::store::archive
