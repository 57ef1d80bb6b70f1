// Result<T>: a value, or the faults that kept it from being made.
//
// Expected failures (a user's file, a user's number) are values of type Fault; they say where, what was
// found, what was expected and what to do. Exceptions are left for the impossible. Nothing here throws
// except Result::value() on a failed result, which is a bug of ours.
#pragma once

#include <cassert>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace lanework {

// Where a fault was found. line and column count from 1; 0 means 'not known'.
struct Place {
  std::string file;
  int line = 0;
  int column = 0;
  std::string field;  // dotted path such as rung.1.change, or a column heading of a spreadsheet
};

// What kind of fault; the table in faults.def gives each its text, exit status and HTTP status.
enum class FaultCode {
#define LANEWORK_FAULT(name, key, exit_status, http_status, sentence) name,
#include "core/base/faults.def"
#undef LANEWORK_FAULT
};

struct Fault {
  FaultCode code;
  Place place;
  std::string found;     // as the user wrote it, shortened and made inert
  std::string expected;  // a noun phrase: 'a whole number from 1 to 90'
  std::string hint;      // optional: what to do
};

using Faults = std::vector<Fault>;

// One row of the fault table.
struct FaultRow {
  const char* key;
  int exit_status;
  int http_status;
  const char* sentence;
};
const FaultRow& fault_row(FaultCode code);

// One clear line: 'squad.toml:7:11: slot.minutes: found -3, expected a whole number from 5 to 60'.
std::string to_line(const Fault& fault);

// The user's text cut to 60 code points, control characters shown as \xNN, quoted.
std::string quote(const std::string& text);

template <class T>
class [[nodiscard]] Result {
 public:
  Result(T value) : state_(std::move(value)) {}                                   // NOLINT(google-explicit-constructor)
  Result(Fault fault) : state_(Faults{std::move(fault)}) {}                       // NOLINT(google-explicit-constructor)
  Result(Faults faults) : state_(std::move(faults)) { assert(!failed_empty()); }  // NOLINT(google-explicit-constructor)

  [[nodiscard]] bool ok() const { return std::holds_alternative<T>(state_); }
  explicit operator bool() const { return ok(); }
  [[nodiscard]] const T& value() const& { return std::get<T>(state_); }
  [[nodiscard]] T& value() & { return std::get<T>(state_); }
  [[nodiscard]] T&& value() && { return std::get<T>(std::move(state_)); }
  [[nodiscard]] const Faults& faults() const { return std::get<Faults>(state_); }

 private:
  [[nodiscard]] bool failed_empty() const { return !ok() && faults().empty(); }
  std::variant<T, Faults> state_;
};

}  // namespace lanework
