// One connection to a PostgreSQL database, with the settings that the ledger's promises rest on. Nothing of libpq's own
// names leaves this folder.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
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
  // One value a row, for unnest: 'elements' as a list of texts, of numbers or of bytes; an empty optional is null.
  Parameters& texts(const std::vector<std::string>& elements);
  Parameters& integers(const std::vector<std::int64_t>& elements);
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

  Result<Rows> ask(const char* statement, const Parameters& parameters = {});
  // Several statements without parameters.
  std::optional<Fault> run(const char* statements);

  [[nodiscard]] const std::string& name() const { return name_; }  // host and database, without a password

 private:
  struct Finish {
    void operator()(pg_conn* connection) const;
  };
  std::unique_ptr<pg_conn, Finish> connection_;
  std::string name_;

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
