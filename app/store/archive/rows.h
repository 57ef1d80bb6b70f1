// Where the rows of a backup come from, and where they go to: one snapshot of a store that others go on writing, and a
// new store that is kept only when all of it is there. app/store/sqlite and app/store/postgres have one of each.
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string>

#include "app/store/archive/tables.h"
#include "app/store/books.h"
#include "core/base/result.h"

namespace lanework::store::archive {

// A fault ends the going through.
using RowWork = std::function<std::optional<Fault>(const Cells&)>;

class Snapshot {
 public:
  virtual ~Snapshot() = default;
  [[nodiscard]] virtual int form() const = 0;  // how many migrations the store has had
  [[nodiscard]] virtual std::string database() const = 0;
  // In the order of the primary key; all calls see one moment.
  virtual std::optional<Fault> each(const Table& table, const RowWork& work) = 0;
};

class NewStore {
 public:
  virtual ~NewStore() = default;  // leaves nothing behind, unless it was kept
  [[nodiscard]] virtual int form() const = 0;
  virtual std::optional<Fault> add(const Table& table, Cells row) = 0;
  // All rows were added; head: of the last entry.
  virtual std::optional<Fault> complete(const LastRow& head) = 0;
  // What lies there now.
  virtual std::optional<Fault> each(const Table& table, const RowWork& work) = 0;
  virtual std::optional<Fault> keep() = 0;
};

}  // namespace lanework::store::archive
