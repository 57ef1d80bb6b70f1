// The gate in a PostgreSQL database that many clubs share.
#include <memory>
#include <utility>

#include "app/store/gate/sql_gate.h"
#include "app/store/key_check.h"
#include "app/store/postgres/connection.h"
#include "app/store/postgres/migrate.h"

namespace lanework::store {
namespace {

using postgres::Connection;
using postgres::Parameters;
using postgres::Rows;

class PostgresStatements final : public Statements {
 public:
  explicit PostgresStatements(Connection connection) : connection_(std::move(connection)) {}

  std::optional<Faults> begin() override {
    if (auto faults = connection_.revive()) return faults;
    auto fault = connection_.run("BEGIN");
    within_ = !fault;
    return fault ? std::optional<Faults>(Faults{*fault}) : std::nullopt;
  }

  std::optional<Faults> commit() override {
    auto fault = connection_.run("COMMIT");
    within_ = within_ && fault.has_value();
    return fault ? std::optional<Faults>(Faults{*fault}) : std::nullopt;
  }

  void roll_back() override {
    within_ = false;
    static_cast<void>(connection_.run("ROLLBACK"));
  }

  [[nodiscard]] const std::string& name() const override { return connection_.name(); }
  [[nodiscard]] const char* passing_over_what_is_locked() const override { return " FOR UPDATE SKIP LOCKED"; }
  // The old rows stand in the tables. A large one takes longer than a statement may.
  [[nodiscard]] std::vector<std::string> that_wipe() const override {
    return {"SET statement_timeout = 0",
            "VACUUM person",
            "VACUUM quarantine",
            "VACUUM entry",
            "VACUUM evening",
            "VACUUM read_note",
            "SET statement_timeout = '30s'"};
  }

 protected:
  Result<Answer> ask(const std::string& text, const std::vector<Value>& values) override {
    if (!within_) {
      if (auto faults = connection_.revive()) return *faults;
    }
    Parameters parameters;
    for (const Value& value : values) add(parameters, value);
    const auto rows = connection_.ask(text.c_str(), parameters);
    if (!rows) return rows.faults();
    Answer out;
    for (int i = 0; i < rows.value().count(); ++i) out.rows.push_back(row_of(rows.value(), i));
    out.changed = rows.value().affected();
    return out;
  }

 private:
  Connection connection_;
  bool within_ = false;  // a transaction, which a new connection would not go on with

  static void add(Parameters& parameters, const Value& value) {
    if (const auto* whole = std::get_if<std::int64_t>(&value)) {
      parameters.integer(*whole);
    } else if (const auto* text = std::get_if<std::string>(&value)) {
      parameters.text(*text);
    } else if (const auto* bytes = std::get_if<Bytes>(&value)) {
      parameters.bytes(bytes->bytes);
    } else {
      parameters.null();
    }
  }

  static std::vector<Value> row_of(const Rows& rows, int row) {
    std::vector<Value> out;
    for (int column = 0; column < rows.columns(); ++column) {
      if (rows.is_null(row, column)) {
        out.emplace_back();
      } else if (rows.kind(column) == Rows::Kind::kInteger) {
        out.emplace_back(rows.integer(row, column));
      } else if (rows.kind(column) == Rows::Kind::kBytes) {
        out.emplace_back(Bytes{rows.text(row, column)});
      } else {
        out.emplace_back(rows.text(row, column));
      }
    }
    return out;
  }
};

}  // namespace

Result<std::unique_ptr<Statements>> open_postgres_statements(const std::string& where, const std::string& club) {
  auto connection = Connection::open(where);
  if (!connection) return connection.faults();
  if (auto faults = postgres::migrate(connection.value())) return *faults;
  if (auto faults = postgres::make_club(connection.value(), club)) return *faults;
  return std::unique_ptr<Statements>(std::make_unique<PostgresStatements>(std::move(connection).value()));
}

Result<std::unique_ptr<Gate>> open_postgres_gate(const std::string& where, const std::string& club, Key key) {
  auto statements = open_postgres_statements(where, club);
  if (!statements) return statements.faults();
  if (auto faults = check_key(*statements.value(), club, key)) return *faults;
  return std::unique_ptr<Gate>(std::make_unique<SqlGate>(std::move(statements).value(), club, std::move(key)));
}

}  // namespace lanework::store
