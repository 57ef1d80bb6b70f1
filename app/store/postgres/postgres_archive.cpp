#include "app/store/postgres/postgres_archive.h"

#include <map>
#include <vector>

#include "app/store/postgres/connection.h"
#include "app/store/postgres/migrate.h"
#include "app/store/postgres/migrations.h"

namespace lanework::store {
namespace {

using archive::Cell;
using archive::Cells;
using archive::RowWork;
using archive::Table;
using postgres::Connection;
using postgres::Parameters;
using postgres::Rows;
using postgres::Transaction;

constexpr std::size_t kAtOnce = 500;

Cell cell_of(const Rows& rows, int row, int column, Cell::Kind kind) {
  if (rows.is_null(row, column)) return {};
  if (kind == Cell::Kind::kWhole) return {kind, rows.integer(row, column), {}};
  return {kind, 0, rows.text(row, column)};
}

// By a cursor, so that no table is here as a whole. Texts stand in the order of their bytes, as they do in SQLite.
std::optional<Fault> each_row(Connection& connection, const std::string& club, const Table& table,
                              const RowWork& work) {
  std::string columns;
  std::string order;
  for (std::size_t i = 0; i < table.columns.size(); ++i) {
    const auto& [name, kind, since] = table.columns[i];
    columns += (i > 0 ? ", " : "") + name + (kind == Cell::Kind::kWhole ? "::bigint" : "");
    if (i < table.keys) order += (i > 0 ? ", " : "") + name + (kind == Cell::Kind::kText ? " COLLATE \"C\"" : "");
  }
  const std::string declare = "DECLARE every NO SCROLL CURSOR FOR SELECT " + columns + " FROM " + table.name +
                              " WHERE club = $1 ORDER BY " + order;
  const auto declared = connection.ask(declare.c_str(), Parameters().text(club));
  if (!declared) return declared.faults().front();
  const std::string fetch = "FETCH " + std::to_string(kAtOnce) + " FROM every";
  for (bool more = true; more;) {
    const auto rows = connection.ask(fetch.c_str());
    if (!rows) return rows.faults().front();
    more = rows.value().count() > 0;
    for (int i = 0; i < rows.value().count(); ++i) {
      Cells cells;
      for (std::size_t column = 0; column < table.columns.size(); ++column) {
        cells.push_back(cell_of(rows.value(), i, static_cast<int>(column), table.columns[column].kind));
      }
      if (auto fault = work(cells)) return fault;
    }
  }
  return connection.run("CLOSE every");
}

class PostgresSnapshot final : public archive::Snapshot {
 public:
  PostgresSnapshot(Connection connection, std::string club)
      : connection_(std::move(connection)), club_(std::move(club)) {}

  std::optional<Faults> begin() {
    // A slow disk for the backup may keep the database waiting.
    constexpr const char* kBegin =
        "BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY; SET LOCAL idle_in_transaction_session_timeout = '10min'";
    if (auto fault = connection_.run(kBegin)) return Faults{*fault};
    const auto form = connection_.ask("SELECT coalesce(max(version), 0)::bigint FROM form");
    if (!form) return form.faults();
    form_ = static_cast<int>(form.value().integer(0, 0));
    if (form_ < 1 || form_ > postgres::kMigrationCount) {
      return Faults{{FaultCode::kContradiction,
                     {connection_.name(), 0, 0, {}},
                     "version " + std::to_string(form_),
                     "version 1 to " + std::to_string(postgres::kMigrationCount),
                     "a newer Lanework wrote it, or it holds no ledger"}};
    }
    const auto club = connection_.ask("SELECT 1 FROM club WHERE club = $1", Parameters().text(club_));
    if (!club) return club.faults();
    if (club.value().count() == 1) return {};
    return Faults{{FaultCode::kUnknownName,
                   {connection_.name(), 0, 0, "--club"},
                   quote(club_),
                   "a club whose ledger lies in that database",
                   {}}};
  }

  [[nodiscard]] int form() const override { return form_; }
  [[nodiscard]] std::string database() const override { return "PostgreSQL"; }
  std::optional<Fault> each(const Table& table, const RowWork& work) override {
    return each_row(connection_, club_, table, work);
  }

 private:
  Connection connection_;
  std::string club_;
  int form_ = 0;
};

class NewPostgresStore final : public archive::NewStore {
 public:
  NewPostgresStore(Connection connection, std::string club)
      : connection_(std::move(connection)), club_(std::move(club)), transaction_(connection_) {}

  // The club's row is locked until the end, so that nobody takes in meanwhile.
  std::optional<Faults> begin() {
    if (auto fault = transaction_.begin()) return Faults{*fault};
    const auto made =
        connection_.ask("INSERT INTO club (club) VALUES ($1) ON CONFLICT DO NOTHING", Parameters().text(club_));
    if (!made) return made.faults();
    const auto locked = connection_.ask("SELECT 1 FROM club WHERE club = $1 FOR UPDATE", Parameters().text(club_));
    if (!locked) return locked.faults();
    // Of a club that was opened and never used; the backup brings its own.
    const auto unused = connection_.ask("DELETE FROM key_check WHERE club = $1", Parameters().text(club_));
    if (!unused) return unused.faults();
    for (const Table& table : archive::tables()) {
      const std::string ask = "SELECT 1 FROM " + table.name + " WHERE club = $1 LIMIT 1";
      const auto some = connection_.ask(ask.c_str(), Parameters().text(club_));
      if (!some) return some.faults();
      if (some.value().count() == 0) continue;
      return Faults{{FaultCode::kCannotWrite,
                     {connection_.name(), 0, 0, "--club"},
                     quote(club_) + ", which has rows in " + table.name,
                     "a club of which nothing lies in that database",
                     {}}};
    }
    return {};
  }

  [[nodiscard]] int form() const override { return postgres::kMigrationCount; }

  std::optional<Fault> add(const Table& table, Cells row) override {
    if (table.name != table_.name) {
      if (auto fault = send()) return fault;
      table_ = table;
    }
    waiting_.push_back(std::move(row));
    return waiting_.size() < kAtOnce ? std::nullopt : send();
  }

  std::optional<Fault> complete(const LastRow& head) override {
    if (auto fault = send()) return fault;
    const auto moved = connection_.ask("UPDATE club SET last_receipt = $2::bigint, last_link = $3 WHERE club = $1",
                                       Parameters().text(club_).integer(head.receipt).bytes(link_text(head.link)));
    if (!moved) return moved.faults().front();
    for (const Table& table : archive::tables()) {
      if (!table.numbered) continue;
      if (auto fault = number_on(table)) return fault;
    }
    return {};
  }

  std::optional<Fault> each(const Table& table, const RowWork& work) override {
    return each_row(connection_, club_, table, work);
  }

  std::optional<Fault> keep() override { return transaction_.commit(); }

 private:
  Connection connection_;
  std::string club_;
  Transaction transaction_;
  Table table_;
  std::vector<Cells> waiting_;

  // A batch as one insert: a list of bytes a column, each cast to what the column holds.
  std::optional<Fault> send() {
    if (waiting_.empty()) return {};
    Parameters parameters;
    parameters.text(club_);
    std::string taken;
    std::string lists;
    std::string names;
    for (std::size_t column = 0; column < table_.columns.size(); ++column) {
      const std::string name = "c" + std::to_string(column);
      std::vector<std::optional<std::string>> list;
      for (Cells& row : waiting_) list.push_back(bytes_of(std::move(row[column])));
      parameters.bytes_list(list);
      lists += (column > 0 ? ", $" : "$") + std::to_string(column + 2) + "::bytea[]";
      names += (column > 0 ? ", " : "") + name;
      taken += ", " + as_column(name, table_.columns[column].kind);
    }
    const std::string insert = "INSERT INTO " + table_.name + " (club, " + archive::column_names(table_) +
                               ") OVERRIDING SYSTEM VALUE SELECT $1" + taken + " FROM unnest(" + lists + ") AS r (" +
                               names + ")";
    waiting_.clear();
    const auto sent = connection_.ask(insert.c_str(), parameters);
    return sent ? std::nullopt : std::optional<Fault>(sent.faults().front());
  }

  static std::optional<std::string> bytes_of(Cell cell) {
    if (cell.kind == Cell::Kind::kNull) return {};
    return cell.kind == Cell::Kind::kWhole ? std::to_string(cell.whole) : std::move(cell.bytes);
  }

  static std::string as_column(const std::string& name, Cell::Kind kind) {
    if (kind == Cell::Kind::kBytes) return name;
    const std::string text = "convert_from(" + name + ", 'UTF8')";
    return kind == Cell::Kind::kWhole ? text + "::bigint" : text;
  }

  // The numbers that were put there are not given again. Nobody is given one meanwhile.
  std::optional<Fault> number_on(const Table& table) {
    const std::string& column = table.columns.front().name;
    const std::string lock = "LOCK TABLE " + table.name + " IN SHARE ROW EXCLUSIVE MODE";
    if (auto fault = connection_.run(lock.c_str())) return fault;
    const std::string sequence = "pg_get_serial_sequence('" + table.name + "', '" + column + "')";
    const std::string on = "SELECT setval(" + sequence + ", greatest((SELECT max(" + column + ") FROM " + table.name +
                           "), nextval(" + sequence + ")))";
    return connection_.run(on.c_str());
  }
};

}  // namespace

Result<std::unique_ptr<archive::Snapshot>> postgres_snapshot(const std::string& where, const std::string& club) {
  auto connection = Connection::open(where);
  if (!connection) return connection.faults();
  auto out = std::make_unique<PostgresSnapshot>(std::move(connection).value(), club);
  if (auto faults = out->begin()) return *faults;
  return std::unique_ptr<archive::Snapshot>(std::move(out));
}

Result<std::unique_ptr<archive::NewStore>> new_postgres_store(const std::string& where, const std::string& club) {
  auto connection = Connection::open(where);
  if (!connection) return connection.faults();
  if (auto faults = postgres::migrate(connection.value())) return *faults;
  auto out = std::make_unique<NewPostgresStore>(std::move(connection).value(), club);
  if (auto faults = out->begin()) return *faults;
  return std::unique_ptr<archive::NewStore>(std::move(out));
}

}  // namespace lanework::store
