#include "app/store/archive/backup.h"

#include <utility>

namespace lanework::store::archive {
namespace {

// Who only wants to know that all of it holds.
class Nobody final : public RowTaker {
 public:
  std::optional<Fault> header(const Header&) override { return {}; }
  std::optional<Fault> table(const Table&) override { return {}; }
  std::optional<Fault> row(const Cells&) override { return {}; }
};

std::optional<Fault> write_tables(Snapshot& from, SealingWriter& out, Manifest& manifest) {
  RowDigest digest;
  const auto write = [&](RecordKind kind, const std::string& payload) {
    digest.add(kind, payload);
    return out.write(record_bytes(kind, payload));
  };
  for (const Table& table : tables_of_form(from.form())) {
    if (auto fault = write(RecordKind::kTable, table_text(table))) return fault;
    std::int64_t& rows = manifest.rows[table.name];
    auto fault = from.each(table, [&](const Cells& cells) {
      ++rows;
      if (table.name == "entry") {
        manifest.head = {cells.at(position_of(table, "receipt")).whole,
                         link_of(cells.at(position_of(table, "link")).bytes)};
      }
      return write(RecordKind::kRow, row_text(cells));
    });
    if (fault) return fault;
  }
  manifest.digest = digest.value();
  return {};
}

// Puts the rows into a new store, those of erased people without their keys.
class Restoring final : public RowTaker {
 public:
  Restoring(NewStore& into, const std::optional<ErasureList>& erased, std::string file)
      : into_(into), erased_(erased), file_(std::move(file)) {
    if (erased) missing_ = erased->people;
  }

  std::optional<Fault> header(const Header& header) override {
    if (header.form <= into_.form()) return {};
    return Fault{FaultCode::kContradiction,
                 {file_, 0, 0, {}},
                 "form " + std::to_string(header.form),
                 "form " + std::to_string(into_.form()) + " or older",
                 "a newer Lanework wrote it"};
  }

  std::optional<Fault> table(const Table& table) override {
    if (auto fault = finish_table()) return fault;
    table_ = table;
    digest_.add(RecordKind::kTable, table_text(table));
    rows_[table.name] = 0;
    return {};
  }

  std::optional<Fault> row(const Cells& cells) override {
    if (table_.name == "person") return person(cells);
    if (table_.name == "quarantine" && is_about_erased(cells)) return {};
    return add(cells);
  }

  // After the last table; then what lies in the new store against what was put there.
  std::optional<Fault> finish(const LastRow& head, const Key& key) {
    if (auto fault = finish_table()) return fault;
    if (not_listed_ > 0) {
      return Fault{FaultCode::kContradiction,
                   {file_, 0, 0, {}},
                   std::to_string(not_listed_) + " people whom the backup knows as erased and the list does not",
                   "the list of the erased of this ledger, not older than the backup",
                   "several servers have a list each: put their lines into one file"};
    }
    if (auto fault = into_.complete(head)) return fault;
    Inspector inspector(key, file_ + ", restored");
    for (const Table& table : read_) {
      inspector.table(table);
      if (auto fault = into_.each(table, [&](const Cells& cells) { return inspector.row(cells); })) return fault;
    }
    if (auto fault = inspector.end()) return fault;
    const Findings found = inspector.findings();
    const bool same = found.rows == rows_ && found.digest == digest_.value() && found.head.receipt == head.receipt &&
                      found.head.link == head.link;
    if (same) return {};
    return Fault{FaultCode::kCannotWrite,
                 {file_, 0, 0, {}},
                 "other rows in the new store than were put there",
                 "a store that keeps what it is given",
                 {}};
  }

  [[nodiscard]] const ErasureList& erased() const { return all_erased_; }

 private:
  NewStore& into_;
  const std::optional<ErasureList>& erased_;
  std::string file_;
  Table table_;
  std::vector<Table> read_;
  std::map<std::string, std::string> missing_;  // of the list: whom the backup does not know, by tag
  std::int64_t not_listed_ = 0;
  ErasureList all_erased_;
  RowDigest digest_;
  std::map<std::string, std::int64_t> rows_;

  // Kept aside about somebody who was erased since: it goes, as it did there.
  [[nodiscard]] bool is_about_erased(const Cells& cells) const {
    const std::size_t person = position_of(table_, "person");
    return person < table_.columns.size() && all_erased_.people.count(cells.at(person).bytes) > 0;
  }

  std::optional<Fault> add(Cells cells) {
    ++rows_[table_.name];
    digest_.add(RecordKind::kRow, row_text(cells));
    if (table_.name == "person" && cells.at(position_of(table_, "sealed_key")).kind == Cell::Kind::kNull) {
      all_erased_.people.emplace(cells.at(position_of(table_, "tag")).bytes,
                                 cells.at(position_of(table_, "erased")).bytes);
    }
    return into_.add(table_, std::move(cells));
  }

  // A person of the list is there as erased, also where the backup is older than the first entry about the person: the
  // phones may send that entry again.
  std::optional<Fault> tombstones_before(const std::string* tag) {
    while (!missing_.empty() && (tag == nullptr || missing_.begin()->first < *tag)) {
      const auto [erased, when] = *missing_.begin();
      missing_.erase(missing_.begin());
      Cells cells(table_.columns.size());
      cells.at(position_of(table_, "tag")) = {Cell::Kind::kBytes, 0, erased};
      cells.at(position_of(table_, "made")) = {Cell::Kind::kText, 0, when};
      cells.at(position_of(table_, "erased")) = {Cell::Kind::kText, 0, when};
      if (auto fault = add(std::move(cells))) return fault;
    }
    return {};
  }

  std::optional<Fault> person(Cells cells) {
    const std::string tag = cells.at(position_of(table_, "tag")).bytes;
    if (auto fault = tombstones_before(&tag)) return fault;
    Cell& sealed_key = cells.at(position_of(table_, "sealed_key"));
    const bool known_as_erased = sealed_key.kind == Cell::Kind::kNull;
    const auto listed = missing_.find(tag);
    if (listed != missing_.end() && !known_as_erased) {
      sealed_key = Cell{};
      cells.at(position_of(table_, "erased")) = {Cell::Kind::kText, 0, listed->second};
    }
    if (listed == missing_.end() && known_as_erased && erased_) ++not_listed_;
    if (listed != missing_.end()) missing_.erase(listed);
    return add(std::move(cells));
  }

  std::optional<Fault> finish_table() {
    if (table_.name.empty()) return {};
    read_.push_back(table_);
    return table_.name == "person" ? tombstones_before(nullptr) : std::nullopt;
  }
};

}  // namespace

Result<Contents> make_backup(Snapshot& from, const Key& key, const PublicKey& to, const std::string& file,
                             const std::string& made) {
  auto out = NewFile::beside(file);
  if (!out) return out.faults();
  auto sealing = SealingWriter::start(out.value(), to);
  if (!sealing) return sealing.faults();
  const Header header{from.form(), from.database(), made};
  if (auto fault = sealing.value().write(record_bytes(RecordKind::kHeader, header_text(header)))) return *fault;
  Manifest manifest;
  if (auto fault = write_tables(from, sealing.value(), manifest)) return *fault;
  manifest.witness = witness_of(key, header, manifest);
  if (auto fault = sealing.value().write(record_bytes(RecordKind::kManifest, manifest_text(manifest)))) return *fault;
  if (auto fault = sealing.value().finish()) return *fault;
  auto back = OpeningReader::open_by_own_key(out.value().temporary(), sealing.value().key());
  if (!back) return back.faults();
  Nobody nobody;
  auto contents = read_archive(back.value(), key, nobody);
  if (!contents) return contents;
  if (contents.value().manifest.digest != manifest.digest || contents.value().manifest.rows != manifest.rows) {
    return cannot_write(file, "another backup than was written");
  }
  if (auto fault = out.value().keep()) return *fault;
  return contents;
}

Result<Restored> restore_backup(const std::string& file, const Key& private_key, const Key& key,
                                const std::optional<ErasureList>& erased, NewStore& into) {
  auto from = OpeningReader::open(file, private_key);
  if (!from) return from.faults();
  Restoring restoring(into, erased, file);
  auto contents = read_archive(from.value(), key, restoring);
  if (!contents) return contents.faults();
  if (auto fault = restoring.finish(contents.value().manifest.head, key)) return *fault;
  return Restored{std::move(contents).value(), restoring.erased()};
}

}  // namespace lanework::store::archive
