// One database as the gate asks it: statements in words that SQLite and PostgreSQL both understand, with $1, $2, ...
// for values and never a value within the text. What each needs besides (binding, types, a lost connection) is its own.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "core/base/result.h"

namespace lanework::store {

struct Bytes {
  std::string bytes;
};

// Null, a whole number, a text, bytes.
using Value = std::variant<std::monostate, std::int64_t, std::string, Bytes>;

struct Answer {
  std::vector<std::vector<Value>> rows;
  std::int64_t changed = 0;  // rows that were added, changed or deleted
};

// A null reads as 0 or as empty.
std::int64_t whole_in(const Value& value);
std::string text_in(const Value& value);  // or the bytes
Value bytes_or_null(const std::string& bytes);
Value text_or_null(const std::string& text);

class Statements {
 public:
  virtual ~Statements() = default;
  // Outside of begin and commit each statement is a transaction of its own. A fault, too: a text with a zero byte,
  // which the two would not keep alike.
  Result<Answer> run(const std::string& text, const std::vector<Value>& values);
  virtual std::optional<Faults> begin() = 0;
  virtual std::optional<Faults> commit() = 0;
  virtual void roll_back() = 0;
  [[nodiscard]] virtual const std::string& name() const = 0;  // of the database, for whoever runs the server
  // Ends a SELECT of rows that are to be changed: those that somebody else is changing are left out, not waited for.
  // Empty where one writes at a time anyway.
  [[nodiscard]] virtual const char* passing_over_what_is_locked() const = 0;
  // Each by itself, outside of a call, after rows were emptied or deleted: until then what they held lies in the
  // database's files.
  [[nodiscard]] virtual std::vector<std::string> that_wipe() const = 0;

 protected:
  virtual Result<Answer> ask(const std::string& text, const std::vector<Value>& values) = 0;
};

// Whichever is opened first brings the database up to the newest version.
Result<std::unique_ptr<Statements>> open_sqlite_statements(const std::string& file);
Result<std::unique_ptr<Statements>> open_postgres_statements(const std::string& where, const std::string& club);

// One call on a database. After a fault nothing is asked any more, and nothing that was returned counts; unless it
// ends well, everything is rolled back.
class Call {
 public:
  enum class Of : std::uint8_t { kOneStatement, kMany };
  explicit Call(Statements& statements, Of of = Of::kOneStatement);
  Call(const Call&) = delete;
  Call& operator=(const Call&) = delete;
  ~Call();

  std::vector<std::vector<Value>> rows(const std::string& text, const std::vector<Value>& values);
  std::int64_t changed(const std::string& text, const std::vector<Value>& values);
  bool changes(const std::string& text, const std::vector<Value>& values) { return changed(text, values) > 0; }
  void fail(Fault fault);
  [[nodiscard]] bool failed() const { return faults_.has_value(); }

  template <class T>
  Result<T> end(T value) {
    commit();
    if (faults_) return *faults_;
    return value;
  }

 private:
  Statements& statements_;
  bool open_ = false;
  std::optional<Faults> faults_;

  Answer ask(const std::string& text, const std::vector<Value>& values);
  void commit();
};

}  // namespace lanework::store
