#include "app/store/archive/read_archive.h"

#include <algorithm>
#include <utility>

namespace lanework::store::archive {
namespace {

// Cuts the pieces into records.
class RecordReader {
 public:
  explicit RecordReader(OpeningReader& from) : from_(from) {}

  // Empty at the end.
  Result<std::optional<Record>> next() {
    if (auto fault = have(kRecordPrefixBytes)) return *fault;
    if (buffer_.size() == at_) return std::optional<Record>();
    if (buffer_.size() - at_ < kRecordPrefixBytes) return odd("a record that is cut off");
    std::size_t length = 0;
    for (std::size_t i = 4; i > 0; --i) length = length << 8 | static_cast<unsigned char>(buffer_[at_ + i]);
    if (length > kLongestRecord) return odd("a record that is too long");
    if (auto fault = have(kRecordPrefixBytes + length)) return *fault;
    if (buffer_.size() - at_ < kRecordPrefixBytes + length) return odd("a record that is cut off");
    Record out{static_cast<RecordKind>(buffer_[at_]), buffer_.substr(at_ + kRecordPrefixBytes, length)};
    at_ += kRecordPrefixBytes + length;
    return std::optional<Record>(std::move(out));
  }

  [[nodiscard]] Fault odd(std::string found) const {
    return {FaultCode::kFileUnreadable,
            {from_.file(), 0, 0, {}},
            std::move(found),
            "a backup as 'lanework backup' wrote it",
            {}};
  }

 private:
  OpeningReader& from_;
  std::string buffer_;
  std::size_t at_ = 0;

  // So many bytes from here on, or all that there are.
  std::optional<Fault> have(std::size_t count) {
    while (buffer_.size() - at_ < count) {
      auto piece = from_.next();
      if (!piece) return piece.faults().front();
      if (piece.value().empty()) return {};
      buffer_.erase(0, at_);
      at_ = 0;
      buffer_ += piece.value();
    }
    return {};
  }
};

// The table as ours, with the columns that the archive has; empty where it cannot be one of its form.
std::optional<Table> known(const Table& table, const Header& header, std::size_t place) {
  const std::vector<Table> ours = tables_of_form(header.form);
  if (place >= ours.size() || ours[place].name != table.name) return {};
  const auto same = [](const Column& a, const Column& b) { return a.name == b.name && a.kind == b.kind; };
  const auto& columns = ours[place].columns;
  const bool alike = std::equal(columns.begin(), columns.end(), table.columns.begin(), table.columns.end(), same);
  return alike ? std::optional<Table>(ours[place]) : std::nullopt;
}

class Reading {
 public:
  Reading(OpeningReader& from, const Key& key, RowTaker& taker)
      : records_(from), key_(key), taker_(taker), inspector_(key, from.file()) {}

  Result<Contents> all() {
    while (!ended_) {
      auto record = records_.next();
      if (!record) return record.faults();
      if (!record.value()) return records_.odd("one without a manifest at its end");
      if (auto fault = take(*record.value())) return *fault;
    }
    const auto more = records_.next();
    if (!more) return more.faults();
    if (more.value()) return records_.odd("records after the manifest");
    if (auto fault = inspector_.end()) return *fault;
    if (auto fault = compare()) return *fault;
    return std::move(out_);
  }

 private:
  RecordReader records_;
  const Key& key_;
  RowTaker& taker_;
  Inspector inspector_;
  Contents out_;
  bool begun_ = false;
  bool ended_ = false;
  std::size_t tables_ = 0;
  Table table_;

  std::optional<Fault> take(const Record& record) {
    if (begun_ == (record.kind == RecordKind::kHeader)) return records_.odd("records in another order");
    switch (record.kind) {
      case RecordKind::kHeader:
        return take_header(record);
      case RecordKind::kTable:
        return take_table(record);
      case RecordKind::kRow:
        return take_row(record);
      case RecordKind::kManifest:
        return take_manifest(record);
    }
    return records_.odd("a record of no kind");
  }

  std::optional<Fault> take_header(const Record& record) {
    const auto header = header_of(record.payload);
    if (!header) return records_.odd("a header of another form");
    out_.header = *header;
    begun_ = true;
    return taker_.header(*header);
  }

  std::optional<Fault> take_table(const Record& record) {
    const auto read = table_of(record.payload);
    const auto table = read ? known(*read, out_.header, tables_) : std::nullopt;
    if (!table) return records_.odd("a table that a store of form " + std::to_string(out_.header.form) + " has not");
    ++tables_;
    table_ = *table;
    inspector_.table(table_);
    return taker_.table(table_);
  }

  std::optional<Fault> take_row(const Record& record) {
    const auto cells = tables_ > 0 ? row_of(table_, record.payload) : std::nullopt;
    if (!cells) return records_.odd("a row that does not fit its table");
    if (auto fault = inspector_.row(*cells)) return fault;
    return taker_.row(*cells);
  }

  std::optional<Fault> take_manifest(const Record& record) {
    const auto manifest = manifest_of(record.payload);
    if (!manifest) return records_.odd("a manifest of another form");
    out_.manifest = *manifest;
    ended_ = true;
    return {};
  }

  // What was read against what the manifest says.
  std::optional<Fault> compare() {
    out_.findings = inspector_.findings();
    const Findings& found = out_.findings;
    const Manifest& said = out_.manifest;
    if (tables_ != tables_of_form(out_.header.form).size()) return records_.odd("one without all tables");
    if (found.rows != said.rows) return records_.odd("other rows than its manifest counts");
    if (found.digest != said.digest) return records_.odd("other rows than its manifest sums up");
    if (found.head.receipt != said.head.receipt || found.head.link != said.head.link) {
      return records_.odd("another last entry than its manifest names");
    }
    if (witness_of(key_, out_.header, said) != said.witness) {
      Fault fault = records_.odd("a manifest that was not written with this ledger's key");
      fault.hint = "is the key the one of this ledger? Else somebody else made this file";
      return fault;
    }
    return {};
  }
};

}  // namespace

Result<Contents> read_archive(OpeningReader& from, const Key& key, RowTaker& taker) {
  return Reading(from, key, taker).all();
}

}  // namespace lanework::store::archive
