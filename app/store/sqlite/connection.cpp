#include "app/store/sqlite/connection.h"

#include <sqlite3.h>

#include <utility>

#include "app/store/sqlite/migrate.h"

namespace lanework::store::sqlite {
namespace {

constexpr int kBusyMilliseconds = 5000;
constexpr int kBetweenMilliseconds = 10;
constexpr int kLongestValueBytes = 1 << 20;
constexpr int kLongestStatementBytes = 64 * 1024;

// What is set, and what it must read afterwards.
struct Setting {
  const char* set;
  const char* read;
  const char* holds;
};
constexpr Setting kSettings[] = {
    // In this order: the change to the log goes through a journal, and only EXTRA flushes the folder once that is gone.
    // Else a power cut may bring the journal back, and with it the empty file from before everything in the log.
    {"PRAGMA synchronous=EXTRA", "PRAGMA synchronous", "3"},
    {"PRAGMA journal_mode=WAL", "PRAGMA journal_mode", "wal"},
    {"PRAGMA foreign_keys=ON", "PRAGMA foreign_keys", "1"},
    {"PRAGMA trusted_schema=OFF", "PRAGMA trusted_schema", "0"},
    {"PRAGMA cell_size_check=ON", "PRAGMA cell_size_check", "1"},
    {"PRAGMA secure_delete=ON", "PRAGMA secure_delete", "1"},
};

}  // namespace

Fault fault_of(sqlite3* database, const std::string& file) {
  const int code = sqlite3_errcode(database) & 0xFF;  // the kind, without the closer words
  const bool reading = code == SQLITE_NOTADB || code == SQLITE_CORRUPT || code == SQLITE_CANTOPEN;
  return {reading ? FaultCode::kFileUnreadable : FaultCode::kCannotWrite,
          {file, 0, 0, {}},
          sqlite3_errmsg(database),
          reading ? "a ledger's file that can be opened" : "a ledger that can be written",
          {}};
}

void Statement::Finalize::operator()(sqlite3_stmt* statement) const { sqlite3_finalize(statement); }

Statement::Statement(sqlite3* database, std::string_view sql) {
  sqlite3_stmt* made = nullptr;
  sqlite3_prepare_v3(database, sql.data(), static_cast<int>(sql.size()), SQLITE_PREPARE_PERSISTENT, &made, nullptr);
  statement_.reset(made);
}

std::optional<Statement> Statement::made(sqlite3* database, std::string_view sql) {
  Statement out(database, sql);
  if (!out.prepared()) return {};
  return out;
}

int Statement::position_of(const char* name) const { return sqlite3_bind_parameter_index(statement_.get(), name); }

Statement& Statement::bind(int position, std::int64_t value) {
  sqlite3_bind_int64(statement_.get(), position, value);
  return *this;
}

Statement& Statement::bind(int position, std::string_view text) {
  sqlite3_bind_text(statement_.get(), position, text.data(), static_cast<int>(text.size()), SQLITE_STATIC);
  return *this;
}

Statement& Statement::bind_blob(int position, std::string_view bytes) {
  sqlite3_bind_blob(statement_.get(), position, bytes.data(), static_cast<int>(bytes.size()), SQLITE_STATIC);
  return *this;
}

Statement& Statement::bind_null(int position) {
  sqlite3_bind_null(statement_.get(), position);
  return *this;
}

Statement::Step Statement::step() {
  if (!prepared()) return Step::kFailed;
  switch (sqlite3_step(statement_.get())) {
    case SQLITE_ROW:
      return Step::kRow;
    case SQLITE_DONE:
      return Step::kDone;
    default:
      return Step::kFailed;
  }
}

void Statement::reset() {
  if (!prepared()) return;
  sqlite3_reset(statement_.get());
  sqlite3_clear_bindings(statement_.get());
}

int Statement::columns() const { return sqlite3_column_count(statement_.get()); }

Statement::Kind Statement::kind(int column) const {
  switch (sqlite3_column_type(statement_.get(), column)) {
    case SQLITE_NULL:
      return Kind::kNull;
    case SQLITE_INTEGER:
      return Kind::kInteger;
    case SQLITE_BLOB:
      return Kind::kBytes;
    default:
      return Kind::kText;
  }
}

std::int64_t Statement::integer(int column) const { return sqlite3_column_int64(statement_.get(), column); }

std::string Statement::text(int column) const {
  const void* bytes = sqlite3_column_blob(statement_.get(), column);
  const int length = sqlite3_column_bytes(statement_.get(), column);
  return bytes == nullptr ? std::string()
                          : std::string(static_cast<const char*>(bytes), static_cast<std::size_t>(length));
}

bool Statement::is_null(int column) const { return sqlite3_column_type(statement_.get(), column) == SQLITE_NULL; }

void Connection::Close::operator()(sqlite3* database) const { sqlite3_close_v2(database); }

Result<Connection> Connection::open(const std::string& file) {
  auto out = open_only(file, SQLITE_OPEN_CREATE);
  if (!out) return out;
  if (auto faults = migrate(out.value())) return *faults;
  return out;
}

Result<Connection> Connection::open_as_it_is(const std::string& file) { return open_only(file, 0); }

Result<Connection> Connection::open_only(const std::string& file, int more_flags) {
  Connection out;
  out.file_ = file;
  sqlite3* made = nullptr;
  constexpr int kFlags = SQLITE_OPEN_READWRITE | SQLITE_OPEN_NOMUTEX | SQLITE_OPEN_EXRESCODE | SQLITE_OPEN_NOFOLLOW;
  const int code = sqlite3_open_v2(file.c_str(), &made, kFlags | more_flags, nullptr);
  out.database_.reset(made);
  if (code != SQLITE_OK) return fault_of(made, file);
  if (auto faults = out.set_up()) return *faults;
  return out;
}

std::optional<Faults> Connection::set_up() {
  sqlite3* database = database_.get();
  sqlite3_busy_timeout(database, kBusyMilliseconds);
  sqlite3_db_config(database, SQLITE_DBCONFIG_DEFENSIVE, 1, nullptr);
  sqlite3_limit(database, SQLITE_LIMIT_LENGTH, kLongestValueBytes);
  sqlite3_limit(database, SQLITE_LIMIT_SQL_LENGTH, kLongestStatementBytes);
  sqlite3_limit(database, SQLITE_LIMIT_ATTACHED, 0);
  for (const Setting& setting : kSettings) {
    if (auto fault = run_in_time(setting.set)) return Faults{*fault};
    Statement read(database, setting.read);
    const bool there = read.step() == Statement::Step::kRow;
    if (there && read.text(0) == setting.holds) continue;
    return Faults{{FaultCode::kContradiction,
                   {file_, 0, 0, {}},
                   std::string(setting.read) + " gives " + (there ? read.text(0) : "nothing"),
                   setting.holds,
                   "a ledger lies on a disk of this machine"}};
  }
  return {};
}

// SQLite itself does not wait for another that turns a new file to WAL at that moment.
std::optional<Fault> Connection::run_in_time(const char* sql) {
  auto fault = run(sql);
  for (int waited = 0; fault && is_busy() && waited < kBusyMilliseconds; waited += kBetweenMilliseconds) {
    sqlite3_sleep(kBetweenMilliseconds);
    fault = run(sql);
  }
  return fault;
}

bool Connection::is_busy() const { return (sqlite3_errcode(database_.get()) & 0xFF) == SQLITE_BUSY; }

std::optional<Fault> Connection::run(const char* sql) {
  if (sqlite3_exec(database_.get(), sql, nullptr, nullptr, nullptr) == SQLITE_OK) return {};
  return fault_of(database_.get(), file_);
}

std::int64_t Connection::total_changes() const { return sqlite3_total_changes64(database_.get()); }
std::optional<Faults> check_form(Connection& connection) {
  Faults out;
  const auto add = [&](std::string found) {
    out.push_back({FaultCode::kFileUnreadable,
                   {connection.file(), 0, 0, {}},
                   std::move(found),
                   "a file in which every page and every reference holds",
                   "take the newest backup ('lanework restore'), and keep this file to look at"});
  };
  Statement pages(connection.database(), "PRAGMA integrity_check(5)");
  Statement::Step step = pages.step();
  for (; step == Statement::Step::kRow; step = pages.step()) {
    if (pages.text(0) != "ok") add(pages.text(0));
  }
  if (step == Statement::Step::kFailed) return Faults{fault_of(connection.database(), connection.file())};
  Statement references(connection.database(), "PRAGMA foreign_key_check");
  step = references.step();
  if (step == Statement::Step::kRow) add("a row of " + references.text(0) + " that refers to nothing");
  if (step == Statement::Step::kFailed) return Faults{fault_of(connection.database(), connection.file())};
  if (out.empty()) return {};
  return out;
}

Transaction::~Transaction() {
  if (open_) static_cast<void>(connection_.run("ROLLBACK"));
}

std::optional<Fault> Transaction::begin() {
  auto fault = connection_.run("BEGIN IMMEDIATE");
  open_ = !fault;
  return fault;
}

std::optional<Fault> Transaction::commit() {
  auto fault = connection_.run("COMMIT");
  if (!fault) open_ = false;
  return fault;
}

}  // namespace lanework::store::sqlite
