#include "app/store/statements.h"

#include <map>
#include <utility>

#include "app/store/gate/sql_gate.h"
#include "app/store/key_check.h"
#include "app/store/sqlite/connection.h"

namespace lanework::store {
namespace {

using sqlite::Connection;
using sqlite::Statement;

class SqliteStatements final : public Statements {
 public:
  explicit SqliteStatements(Connection connection) : connection_(std::move(connection)) {}

  std::optional<Faults> begin() override { return faults_of(connection_.run("BEGIN IMMEDIATE")); }
  std::optional<Faults> commit() override { return faults_of(connection_.run("COMMIT")); }
  void roll_back() override { static_cast<void>(connection_.run("ROLLBACK")); }
  [[nodiscard]] const std::string& name() const override { return connection_.file(); }
  [[nodiscard]] const char* passing_over_what_is_locked() const override { return ""; }
  // The old pages stand in the log.
  [[nodiscard]] std::vector<std::string> that_wipe() const override { return {"PRAGMA wal_checkpoint(TRUNCATE)"}; }

 protected:
  Result<Answer> ask(const std::string& text, const std::vector<Value>& values) override {
    Prepared* prepared = find(text);
    if (prepared == nullptr) return fault();
    Statement& statement = prepared->statement;
    for (std::size_t i = 0; i < values.size(); ++i) bind(statement, prepared->position_of(i), values[i]);
    Answer out;
    const std::int64_t before = total_changes();
    Statement::Step step = statement.step();
    for (; step == Statement::Step::kRow; step = statement.step()) out.rows.push_back(row_of(statement));
    out.changed = total_changes() - before;
    if (step == Statement::Step::kDone) {
      statement.reset();
      return out;
    }
    Fault failed = fault();
    statement.reset();
    return failed;
  }

 private:
  struct Prepared {
    Statement statement;
    std::vector<int> positions;  // of $1, $2, ..., looked up once
    int position_of(std::size_t value) {
      for (std::size_t i = positions.size(); i <= value; ++i) {
        positions.push_back(statement.position_of(("$" + std::to_string(i + 1)).c_str()));
      }
      return positions[value];
    }
  };
  Connection connection_;
  std::map<std::string, Prepared> prepared_;  // by their text; there are as many as the gate has statements

  [[nodiscard]] Fault fault() const { return sqlite::fault_of(connection_.database(), connection_.file()); }
  [[nodiscard]] std::int64_t total_changes() const { return connection_.total_changes(); }

  static std::optional<Faults> faults_of(std::optional<Fault> fault) {
    if (!fault) return {};
    return Faults{std::move(*fault)};
  }

  Prepared* find(const std::string& text) {
    const auto found = prepared_.find(text);
    if (found != prepared_.end()) return &found->second;
    auto made = Statement::made(connection_.database(), text);
    if (!made) return nullptr;
    return &prepared_.emplace(text, Prepared{std::move(*made), {}}).first->second;
  }

  static void bind(Statement& statement, int position, const Value& value) {
    if (const auto* whole = std::get_if<std::int64_t>(&value)) {
      statement.bind(position, *whole);
    } else if (const auto* text = std::get_if<std::string>(&value)) {
      statement.bind(position, std::string_view(*text));
    } else if (const auto* bytes = std::get_if<Bytes>(&value)) {
      statement.bind_blob(position, bytes->bytes);
    } else {
      statement.bind_null(position);
    }
  }

  static std::vector<Value> row_of(const Statement& statement) {
    std::vector<Value> out;
    for (int column = 0; column < statement.columns(); ++column) {
      switch (statement.kind(column)) {
        case Statement::Kind::kNull:
          out.emplace_back();
          break;
        case Statement::Kind::kInteger:
          out.emplace_back(statement.integer(column));
          break;
        case Statement::Kind::kText:
          out.emplace_back(statement.text(column));
          break;
        case Statement::Kind::kBytes:
          out.emplace_back(Bytes{statement.text(column)});
          break;
      }
    }
    return out;
  }
};

}  // namespace

Result<std::unique_ptr<Statements>> open_sqlite_statements(const std::string& file) {
  auto connection = Connection::open(file);
  if (!connection) return connection.faults();
  return std::unique_ptr<Statements>(std::make_unique<SqliteStatements>(std::move(connection).value()));
}

Result<std::unique_ptr<Gate>> open_sqlite_gate(const std::string& file, Key key) {
  auto statements = open_sqlite_statements(file);
  if (!statements) return statements.faults();
  if (auto faults = check_key(*statements.value(), "", key)) return *faults;
  return std::unique_ptr<Gate>(std::make_unique<SqlGate>(std::move(statements).value(), std::string(), std::move(key)));
}

}  // namespace lanework::store
