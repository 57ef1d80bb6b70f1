// Looks at every row of a store, wherever it comes from: the chain from the first entry to the last, and everything
// sealed opened under the key that it should be sealed with.
#pragma once

#include <map>
#include <optional>
#include <string>

#include "app/store/archive/records.h"
#include "app/store/index_of_days.h"
#include "app/store/seals.h"

namespace lanework::store::archive {

// Over the records of tables and rows, so that two stores of the same rows have the same, whatever they lie in.
class RowDigest {
 public:
  RowDigest();
  void add(RecordKind kind, const std::string& payload);
  [[nodiscard]] std::string value() const;  // so far

 private:
  Link link_{};
};

struct Findings {
  std::map<std::string, std::int64_t> rows;  // by table
  LastRow head;
  std::string digest;
  std::int64_t opened = 0;     // entries about people, each opened
  std::int64_t of_erased = 0;  // entries of people who were erased
  std::int64_t past = 0;       // entries that went, by sealed compactions
  std::int64_t erased_people = 0;
};

class Inspector {
 public:
  // where: for faults.
  Inspector(const Key& key, std::string where) : key_(key), where_(std::move(where)), seals_(key) {}

  void table(const Table& table);
  // The next row of it. A fault: a row that cannot stand there.
  std::optional<Fault> row(const Cells& cells);
  // After the last row: what no single row shows.
  [[nodiscard]] std::optional<Fault> end() const;
  [[nodiscard]] Findings findings() const;
  [[nodiscard]] const std::map<std::string, std::optional<Key>>& people() const { return people_; }

 private:
  const Key& key_;
  std::string where_;
  Table table_;
  RowDigest digest_;
  Findings findings_;
  Seals seals_;
  IndexOfDays index_;
  bool has_index_ = false;                            // not in older forms
  std::map<std::string, std::optional<Key>> people_;  // by tag; empty: erased

  [[nodiscard]] const Cell& cell(const Cells& cells, const char* column) const;
  [[nodiscard]] Fault fault(std::string found) const;
  void compaction(const Cells& cells);
  std::optional<Fault> person(const Cells& cells);
  std::optional<Fault> entry(const Cells& cells);
  std::optional<Fault> aside(const Cells& cells);
};

}  // namespace lanework::store::archive
