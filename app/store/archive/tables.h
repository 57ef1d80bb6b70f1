// Every table of the store as a list: what a backup holds, in which order. A table that a migration adds is one more
// row here; everything that reads and writes backups goes by this list, on either database. Not in it are sessions,
// open pairings and failures, since nobody is signed in to a restored server, planning jobs, which are asked again, and
// 'lists', whose id must be another there.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace lanework::store::archive {

struct Cell {
  enum class Kind : std::uint8_t { kNull, kWhole, kText, kBytes };
  Kind kind = Kind::kNull;
  std::int64_t whole = 0;
  std::string bytes;  // of a text or of bytes
};
using Cells = std::vector<Cell>;

struct Column {
  std::string name;
  Cell::Kind kind = Cell::Kind::kText;  // what it holds where it is not null
  int since = 1;                        // the first form of the store that has it
};

// Every one has 'club' besides, of the newest form on SQLite too. On PostgreSQL whole numbers are bigint or integer,
// and bytes are bytea.
struct Table {
  std::string name;
  int since = 1;  // the first form of the store that has it
  std::vector<Column> columns;
  std::size_t keys = 1;   // so many columns from the first are the primary key: rows stand in their order
  bool numbered = false;  // the first column is a number that the database gives
};

// Those that are referred to stand before those that refer to them.
const std::vector<Table>& tables();

// Those of a form of the store, with the columns that they had.
std::vector<Table> tables_of_form(int form);

// "tag, sealed_key, made": for statements; names are ours.
std::string column_names(const Table& table);

// Where a column of that name stands; past the end where there is none.
std::size_t position_of(const Table& table, const std::string& column);

}  // namespace lanework::store::archive
