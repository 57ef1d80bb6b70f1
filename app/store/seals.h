// What went from the books, and the proof that it went by its time: each compaction empties some rows and seals their
// links under a key that is derived from the store's. A row that is emptied without one, and one that a compaction
// names and that is back, are found. docs/model/store.md.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>

#include "app/store/books.h"

namespace lanework::store {

struct Compaction {
  std::int64_t number = 0;
  std::string made;        // the server's clock with its offset
  std::string why;         // 'evenings' or 'erased'
  std::string until_day;   // of evenings: those of days before that one; else empty
  std::int64_t first = 0;  // the lowest receipt
  std::int64_t entries = 0;
  std::string seal{};  // 32 bytes
};

// Over what stays of the rows, in the order of receipts.
class RowsOfCompaction {
 public:
  void add(const Row& row, const Link& link);
  [[nodiscard]] std::int64_t first() const { return first_; }
  [[nodiscard]] std::int64_t count() const { return count_; }
  [[nodiscard]] const Link& link() const { return link_; }

 private:
  std::int64_t first_ = 0;
  std::int64_t count_ = 0;
  Link link_{};
};

// 'seal' is not read.
std::string seal_of(const Key& key, const Compaction& compaction, const RowsOfCompaction& rows);

// The same of the notes that went from the front of the book of reads.
std::string seal_of_reads(const Key& key, std::int64_t last_number, const Link& last_link, const std::string& made);

// Compares what is emptied with what was sealed, whichever comes first.
class Seals {
 public:
  explicit Seals(const Key& key) : key_(key) {}
  void expect(const Compaction& compaction) { compactions_[compaction.number] = compaction; }
  // By receipt.
  void passed_over(std::int64_t number, const Row& row, const Link& link) { rows_[number].add(row, link); }
  [[nodiscard]] std::int64_t entries() const;  // emptied ones
  // The lowest receipt at which emptied rows and compactions do not agree.
  [[nodiscard]] std::optional<std::int64_t> first_wrong() const;

 private:
  const Key& key_;
  std::map<std::int64_t, Compaction> compactions_;
  std::map<std::int64_t, RowsOfCompaction> rows_;  // by the number that they bear
};

// Of an emptied row: no entry has it, since it is no UUID of the version that ids are.
std::string id_of_emptied(std::int64_t receipt);

// Whether nothing but receipt, device, sequence, role and link is there.
bool is_emptied(const Row& row);

}  // namespace lanework::store
