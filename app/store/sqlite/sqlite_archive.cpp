#include "app/store/sqlite/sqlite_archive.h"

#include <filesystem>
#include <map>

#include "app/store/sqlite/connection.h"
#include "app/store/sqlite/migrate.h"

namespace lanework::store {
namespace {

namespace fs = std::filesystem;
using archive::Cell;
using archive::Cells;
using archive::RowWork;
using archive::Table;
using sqlite::Connection;
using sqlite::Statement;
using sqlite::Transaction;

Fault fault_of(const Connection& connection) { return sqlite::fault_of(connection.database(), connection.file()); }

Cell cell_of(const Statement& statement, int column, Cell::Kind kind) {
  if (statement.is_null(column)) return {};
  if (kind == Cell::Kind::kWhole) return {kind, statement.integer(column), {}};
  return {kind, 0, statement.text(column)};
}

std::optional<Fault> each_row(Connection& connection, const Table& table, const RowWork& work) {
  std::string sql = "SELECT " + archive::column_names(table) + " FROM " + table.name + " ORDER BY ";
  for (std::size_t i = 0; i < table.keys; ++i) sql += (i > 0 ? ", " : "") + table.columns[i].name;
  Statement rows(connection.database(), sql);
  Statement::Step step = rows.step();
  for (; step == Statement::Step::kRow; step = rows.step()) {
    Cells cells;
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
      cells.push_back(cell_of(rows, static_cast<int>(i), table.columns[i].kind));
    }
    if (auto fault = work(cells)) return fault;
  }
  if (step == Statement::Step::kFailed) return fault_of(connection);
  return {};
}

class SqliteSnapshot final : public archive::Snapshot {
 public:
  explicit SqliteSnapshot(Connection connection) : connection_(std::move(connection)) {}

  std::optional<Fault> begin() {
    if (auto fault = connection_.run("BEGIN")) return fault;
    Statement version(connection_.database(), "PRAGMA user_version");  // the first read: from here on it is one moment
    if (version.step() != Statement::Step::kRow) return fault_of(connection_);
    form_ = static_cast<int>(version.integer(0));
    if (form_ > 0 && form_ <= sqlite::newest_version()) return {};
    return Fault{FaultCode::kContradiction,
                 {connection_.file(), 0, 0, {}},
                 "version " + std::to_string(form_),
                 "version 1 to " + std::to_string(sqlite::newest_version()),
                 "a newer Lanework wrote it, or it is no ledger"};
  }

  [[nodiscard]] int form() const override { return form_; }
  [[nodiscard]] std::string database() const override { return "SQLite"; }
  std::optional<Fault> each(const Table& table, const RowWork& work) override {
    return each_row(connection_, table, work);
  }

 private:
  Connection connection_;
  int form_ = 0;
};

class NewSqliteStore final : public archive::NewStore {
 public:
  NewSqliteStore() = default;
  NewSqliteStore(const NewSqliteStore&) = delete;
  NewSqliteStore& operator=(const NewSqliteStore&) = delete;
  ~NewSqliteStore() override { drop_connection(); }

  std::optional<Faults> begin(const std::string& folder) {
    auto connection = Connection::open((fs::path(folder) / "ledger.sqlite").string());
    if (!connection) return connection.faults();
    connection_ = std::make_unique<Connection>(std::move(connection).value());
    transaction_ = std::make_unique<Transaction>(*connection_);
    if (auto fault = transaction_->begin()) return Faults{*fault};
    return {};
  }

  [[nodiscard]] int form() const override { return sqlite::newest_version(); }

  std::optional<Fault> add(const Table& table, Cells row) override {
    auto found = inserts_.find(table.name);
    if (found == inserts_.end()) found = inserts_.emplace(table.name, insert_of(table)).first;
    Statement& insert = found->second;
    for (std::size_t i = 0; i < row.size(); ++i) bind(insert, static_cast<int>(i) + 1, row[i]);
    const Statement::Step step = insert.step();
    if (step == Statement::Step::kFailed) return fault_of(*connection_);
    insert.reset();
    return {};
  }

  // From here on what is read comes from the file, not from memory: it is written, closed and opened again.
  std::optional<Fault> complete(const LastRow&) override {
    inserts_.clear();
    if (auto fault = transaction_->commit()) return fault;
    if (auto fault = connection_->run("PRAGMA wal_checkpoint(TRUNCATE)")) return fault;
    const std::string file = connection_->file();
    drop_connection();
    auto connection = Connection::open_as_it_is(file);
    if (!connection) return connection.faults().front();
    connection_ = std::make_unique<Connection>(std::move(connection).value());
    auto faults = sqlite::check_form(*connection_);
    return faults ? std::optional<Fault>(faults->front()) : std::nullopt;
  }

  std::optional<Fault> each(const Table& table, const RowWork& work) override {
    return each_row(*connection_, table, work);
  }

  std::optional<Fault> keep() override {
    drop_connection();
    return {};
  }

 private:
  std::unique_ptr<Connection> connection_;
  std::unique_ptr<Transaction> transaction_;
  std::map<std::string, Statement> inserts_;

  void drop_connection() {
    inserts_.clear();
    transaction_.reset();
    connection_.reset();
  }

  // Every one has 'club' besides, which is '' here.
  Statement insert_of(const Table& table) {
    std::string places;
    for (std::size_t i = 0; i < table.columns.size(); ++i) places += ", ?" + std::to_string(i + 1);
    return {connection_->database(),
            "INSERT INTO " + table.name + " (club, " + archive::column_names(table) + ") VALUES (''" + places + ")"};
  }

  static void bind(Statement& statement, int position, const Cell& cell) {
    switch (cell.kind) {
      case Cell::Kind::kNull:
        statement.bind_null(position);
        return;
      case Cell::Kind::kWhole:
        statement.bind(position, cell.whole);
        return;
      case Cell::Kind::kText:
        statement.bind(position, cell.bytes);
        return;
      case Cell::Kind::kBytes:
        statement.bind_blob(position, cell.bytes);
        return;
    }
  }
};

}  // namespace

Result<std::unique_ptr<archive::Snapshot>> sqlite_snapshot(const std::string& file) {
  auto connection = Connection::open_as_it_is(file);
  if (!connection) return connection.faults();
  auto out = std::make_unique<SqliteSnapshot>(std::move(connection).value());
  if (auto fault = out->begin()) return *fault;
  return std::unique_ptr<archive::Snapshot>(std::move(out));
}

Result<std::unique_ptr<archive::NewStore>> new_sqlite_store(const std::string& folder) {
  auto out = std::make_unique<NewSqliteStore>();
  if (auto faults = out->begin(folder)) return *faults;
  return std::unique_ptr<archive::NewStore>(std::move(out));
}

}  // namespace lanework::store
