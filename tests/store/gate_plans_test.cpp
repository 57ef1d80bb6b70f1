// How SQLite goes about each statement of the gate: by an index, never over a whole table.
#include <gtest/gtest.h>

#include <set>

#include "app/store/gate/sql_gate.h"
#include "app/store/statements.h"
#include "tests/store/gate_steps.h"

namespace lanework::store {
namespace {

// What hands out all that there is, or the latest of it.
bool is_list(const std::string& text) {
  const std::size_t where = text.find(" WHERE ");
  const std::string rest = where == std::string::npos ? "" : text.substr(where);
  return rest.rfind(" WHERE a.club = $1 ORDER BY", 0) == 0 || rest.rfind(" WHERE club = $1 ORDER BY", 0) == 0;
}

// Has every statement explained before it is run.
class Explained final : public Statements {
 public:
  Explained(std::unique_ptr<Statements> real, std::set<std::string>& seen, std::string& wholes)
      : real_(std::move(real)), seen_(seen), wholes_(wholes) {}
  std::optional<Faults> begin() override { return real_->begin(); }
  std::optional<Faults> commit() override { return real_->commit(); }
  void roll_back() override { real_->roll_back(); }
  [[nodiscard]] const std::string& name() const override { return real_->name(); }
  [[nodiscard]] const char* passing_over_what_is_locked() const override {
    return real_->passing_over_what_is_locked();
  }
  [[nodiscard]] std::vector<std::string> that_wipe() const override { return real_->that_wipe(); }

 protected:
  Result<Answer> ask(const std::string& text, const std::vector<Value>& values) override {
    if (seen_.insert(text).second) {
      for (const auto& row : test::must(real_->run("EXPLAIN QUERY PLAN " + text, values)).rows) {
        const std::string step = text_in(row[3]);
        // By the club alone is over the whole table, too, but for the one row that each club has.
        const bool by_club = step.find("(club=?)") != std::string::npos &&
                             step.find("read_head") == std::string::npos && step.find("read_past") == std::string::npos;
        const bool whole = (step.rfind("SCAN ", 0) == 0 && !is_list(text)) || by_club;
        if (whole) wholes_ += step + ": " + text.substr(0, text.find("WHERE")) + "\n";
      }
    }
    return real_->run(text, values);
  }

 private:
  std::unique_ptr<Statements> real_;
  std::set<std::string>& seen_;
  std::string& wholes_;
};

TEST(GatePlans, NoStatementGoesOverAWholeTable) {
  const test::SqliteFile file;
  std::set<std::string> seen;
  std::string wholes;
  SqlGate gate(std::make_unique<Explained>(test::must(open_sqlite_statements(file.file())), seen, wholes), "",
               Key::made());
  test::Player player(gate);
  for (int verb = 0; verb < test::kVerbs; ++verb) {
    for (int two = 0; two < 3; ++two) static_cast<void>(player.play({verb, 0, two, two, 5}));
  }
  static_cast<void>(player.state());
  EXPECT_EQ(wholes, "");
  EXPECT_GE(seen.size(), 40U) << "not all were asked";
}

}  // namespace
}  // namespace lanework::store
