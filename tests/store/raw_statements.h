// Another program that has the database open and says what it likes.
#pragma once

#include <libpq-fe.h>
#include <sqlite3.h>

#include <string>

#include "tests/store/backend.h"

namespace lanework::store::test {

class Raw {
 public:
  explicit Raw(const std::string& file) { sqlite3_open(file.c_str(), &database_); }
  Raw(const Raw&) = delete;
  Raw& operator=(const Raw&) = delete;
  ~Raw() { sqlite3_close(database_); }

  // What it was refused for; empty: it was not.
  std::string run(const std::string& sql) { return run(sql, nullptr); }
  // The values of all rows, '|' after each.
  std::string values(const std::string& sql) {
    std::string out;
    const std::string refused = run(sql, &out);
    return out + refused;
  }

 private:
  sqlite3* database_ = nullptr;

  std::string run(const std::string& sql, std::string* out) {
    char* words = nullptr;
    const auto add = [](void* to, int count, char** values, char**) {
      for (int i = 0; to != nullptr && i < count; ++i) {
        *static_cast<std::string*>(to) += std::string(values[i] == nullptr ? "" : values[i]) + "|";
      }
      return 0;
    };
    sqlite3_exec(database_, sql.c_str(), add, out, &words);
    std::string refused = words == nullptr ? "" : words;
    sqlite3_free(words);
    return refused;
  }
};

// The values of all rows, '|' after each; or why not.
inline std::string said(const std::string& where, const std::string& statement) {
  PGconn* connection = PQconnectdb(where.c_str());
  PGresult* result = PQexec(connection, statement.c_str());
  std::string out = PQresultErrorMessage(result);
  for (int row = 0; row < PQntuples(result); ++row) {
    for (int column = 0; column < PQnfields(result); ++column) {
      out += std::string(PQgetvalue(result, row, column)) + "|";
    }
  }
  PQclear(result);
  PQfinish(connection);
  return out;
}

// On the gate's file or database of a backend.
inline std::string said(const Backend& backend, const std::string& statement) {
  if (!backend.where().empty()) return said(backend.where(), statement);
  return Raw(backend.file().file("quillmere")).values(statement);
}

}  // namespace lanework::store::test
