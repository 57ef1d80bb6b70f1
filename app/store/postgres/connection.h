// One connection to a PostgreSQL database, with the settings that the ledger's promises rest on. Nothing of libpq's own
// names leaves this folder.
#pragma once

#include <cstdint>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"

struct pg_conn;
struct pg_result;

namespace lanework::store::postgres {

// Values for the $1, $2, ... of one statement.
class Parameters {
 public:
  Parameters& text(std::string value);
  Parameters& integer(std::int64_t value);
  Parameters& bytes(std::string value);
  Parameters& null();
  // One value a row, for unnest: 'elements' as a list of texts or of bytes; an empty optional is null.
  Parameters& texts(const std::vector<std::string>& elements);
  Parameters& bytes_list(const std::vector<std::optional<std::string>>& elements);

 private:
  friend class Connection;
  struct Value {
    std::string text;
    bool binary = false;
    bool null = false;
    unsigned type = 0;  // PostgreSQL's number of a type; 0: it finds out
  };
  std::vector<Value> values_;
};

// Rows for COPY ... FROM STDIN (FORMAT binary), value by value in the order of its columns; add each row first.
class CopiedRows {
 public:
  // columns: of each row.
  explicit CopiedRows(std::uint16_t columns);
  CopiedRows& row();
  CopiedRows& text(std::string_view value);  // or a bytea's bytes
  CopiedRows& integer(std::int64_t value);   // of a bigint
  CopiedRows& null();

 private:
  friend class Connection;
  std::uint16_t columns_;
  std::string bytes_;
};

// The rows that a statement gave, all here.
class Rows {
 public:
  explicit Rows(pg_result* result) : result_(result) {}
  [[nodiscard]] int count() const;
  [[nodiscard]] int columns() const;
  enum class Kind : std::uint8_t { kInteger, kBytes, kText };
  [[nodiscard]] Kind kind(int column) const;
  [[nodiscard]] std::int64_t integer(int row, int column) const;  // of a bigint
  [[nodiscard]] std::string text(int row, int column) const;      // or a bytea's bytes
  [[nodiscard]] bool is_null(int row, int column) const;
  [[nodiscard]] std::int64_t affected() const;

 private:
  friend class Connection;
  struct Clear {
    void operator()(pg_result* result) const;
  };
  std::unique_ptr<pg_result, Clear> result_;
};

class Connection {
 public:
  // where: a connection string or URI of PostgreSQL's own. Faults: nobody answers, the server is older than 15, or a
  // setting is not as the ledger needs it.
  static Result<Connection> open(const std::string& where);

  // Connects again where the connection was lost.
  std::optional<Faults> revive();

  // The server reads and plans each statement once a connection; as many are kept as there are texts.
  Result<Rows> ask(const char* statement, const Parameters& parameters = {});
  // statement: a COPY of ours. The rows are there, or the transaction has failed.
  std::optional<Fault> copy(const char* statement, const CopiedRows& rows);
  // Several statements without parameters.
  std::optional<Fault> run(const char* statements);

  [[nodiscard]] const std::string& name() const { return name_; }  // host and database, without a password

 private:
  struct Finish {
    void operator()(pg_conn* connection) const;
  };
  std::unique_ptr<pg_conn, Finish> connection_;
  std::string name_;
  std::map<std::string, std::string, std::less<>> prepared_;  // names by text

  [[nodiscard]] std::optional<Fault> prepare(const char* statement, const Parameters& parameters);
  [[nodiscard]] Fault fault(const std::string& words) const;
  std::optional<Faults> set_up();
};

// All of it or nothing: rolled back unless committed.
class Transaction {
 public:
  explicit Transaction(Connection& connection) : connection_(connection) {}
  Transaction(const Transaction&) = delete;
  Transaction& operator=(const Transaction&) = delete;
  ~Transaction();
  std::optional<Fault> begin();
  std::optional<Fault> commit();

 private:
  Connection& connection_;
  bool open_ = false;
};

}  // namespace lanework::store::postgres
