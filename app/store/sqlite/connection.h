// One connection to a SQLite file, with the settings that the ledger's promises rest on, and statements on it. Nothing
// of SQLite's own names leaves this folder.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "core/base/result.h"

struct sqlite3;
struct sqlite3_stmt;

namespace lanework::store::sqlite {

// What SQLite says, in one line for whoever runs the server; never the data.
Fault fault_of(sqlite3* database, const std::string& file);

// A prepared statement. Texts and blobs that are bound must live until the step. One that SQLite did not take, since
// the file cannot be read or is damaged, fails at its first step.
class Statement {
 public:
  Statement() = default;
  Statement(sqlite3* database, std::string_view sql);
  static std::optional<Statement> made(sqlite3* database, std::string_view sql);  // empty: SQLite does not take it now
  Statement(Statement&&) noexcept = default;
  Statement& operator=(Statement&&) noexcept = default;

  Statement& bind(int position, std::int64_t value);
  Statement& bind(int position, std::string_view text);
  Statement& bind_blob(int position, std::string_view bytes);
  Statement& bind_null(int position);

  [[nodiscard]] bool prepared() const { return statement_ != nullptr; }
  // Where a $1 is bound; SQLite counts by the order in which they stand. 0: it does not stand there.
  [[nodiscard]] int position_of(const char* name) const;

  enum class Step : std::uint8_t { kRow, kDone, kFailed };
  Step step();
  void reset();  // for the next use; also forgets what was bound

  [[nodiscard]] int columns() const;
  enum class Kind : std::uint8_t { kNull, kInteger, kText, kBytes };
  [[nodiscard]] Kind kind(int column) const;
  [[nodiscard]] std::int64_t integer(int column) const;
  [[nodiscard]] std::string text(int column) const;  // or a blob's bytes
  [[nodiscard]] bool is_null(int column) const;

 private:
  struct Finalize {
    void operator()(sqlite3_stmt* statement) const;
  };
  std::unique_ptr<sqlite3_stmt, Finalize> statement_;
};

class Connection {
 public:
  // Opens or creates. Faults: the file cannot be opened or written, is no database, is of a newer version of ours, or a
  // setting does not hold after it was set.
  static Result<Connection> open(const std::string& file);

  [[nodiscard]] sqlite3* database() const { return database_.get(); }
  [[nodiscard]] const std::string& file() const { return file_; }
  std::optional<Fault> run(const char* sql);
  [[nodiscard]] std::int64_t total_changes() const;  // rows since it was opened

  // Opens what is there and leaves its form as it is. A fault where there is nothing.
  static Result<Connection> open_as_it_is(const std::string& file);

 private:
  static Result<Connection> open_only(const std::string& file, int more_flags);
  struct Close {
    void operator()(sqlite3* database) const;
  };
  std::unique_ptr<sqlite3, Close> database_;
  std::string file_;

  std::optional<Faults> set_up();
  std::optional<Fault> run_in_time(const char* sql);
  [[nodiscard]] bool is_busy() const;
};

// What SQLite itself finds wrong with the file's pages, indexes, constraints and references, as faults.
std::optional<Faults> check_form(Connection& connection);

// All of it or nothing: rolled back unless committed.
class Transaction {
 public:
  explicit Transaction(Connection& connection) : connection_(connection) {}
  Transaction(const Transaction&) = delete;
  Transaction& operator=(const Transaction&) = delete;
  ~Transaction();
  std::optional<Fault> begin();  // takes the one writer's place
  std::optional<Fault> commit();

 private:
  Connection& connection_;
  bool open_ = false;
};

}  // namespace lanework::store::sqlite
