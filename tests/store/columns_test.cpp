// Each column of each table that a store makes has a class, in the comment beside it: who may see what lies there, and
// how it must lie there, follows from it (docs/model/gate.md).
#include <gtest/gtest.h>

#include <map>
#include <regex>
#include <set>
#include <sstream>

#include "app/store/postgres/migrate.h"
#include "app/store/postgres/migrations.h"
#include "app/store/sqlite/migrations.h"
#include "tests/store/raw_statements.h"

namespace lanework::store {
namespace {

using test::Backend;
using test::said;

using Classes = std::map<std::string, std::string>;  // of 'table.column'; a class that is none is empty

Classes classes_in(const std::string& sql) {
  static const std::regex kTable(R"(CREATE TABLE (?:IF NOT EXISTS )?([a-z_]+) \()");
  static const std::regex kColumn(R"(  ([a-z_]+) .*)");
  static const std::regex kClassed(R"(  [a-z_]+ .* -- (public|club|personal|health|secret)(: .+)?)");
  static const std::regex kAdded(R"(ALTER TABLE ([a-z_]+) ADD COLUMN ([a-z_]+) .* -- (public|club|personal|health|secret)(: .+)?)");
  Classes out;
  std::istringstream lines(sql);
  std::string table;
  for (std::string line; std::getline(lines, line);) {
    std::smatch found;
    if (std::regex_match(line, found, kAdded)) {
      out[found[1].str() + "." + found[2].str()] = found[3];
    } else if (std::regex_match(line, found, kTable)) {
      table = found[1];
    } else if (line.rfind(')', 0) == 0) {
      table.clear();
    } else if (!table.empty() && std::regex_match(line, found, kColumn)) {
      const std::string name = table + "." + found[1].str();
      out[name] = std::regex_match(line, found, kClassed) ? found[1].str() : "";
    }
  }
  return out;
}

Classes classes_of(const std::string& database) {
  Classes out;
  const bool sqlite = database == "SQLite";
  for (int i = 0; i < (sqlite ? sqlite::kMigrationCount : postgres::kMigrationCount); ++i) {
    out.merge(classes_in(sqlite ? sqlite::kMigrations[i] : postgres::kMigrations[i]));
  }
  if (!sqlite) out.merge(classes_in(postgres::kForm));
  return out;
}

// As the database itself tells them.
std::set<std::string> columns_of(const Backend& backend) {
  const bool sqlite = backend.where().empty();
  std::istringstream names(said(backend, sqlite ? "SELECT m.name || '.' || c.name FROM sqlite_master m, "
                                                  "pragma_table_info(m.name) c WHERE m.type = 'table'"
                                                : "SELECT c.relname || '.' || a.attname FROM pg_attribute a JOIN "
                                                  "pg_class c ON c.oid = a.attrelid WHERE c.relkind IN ('r', 'p') AND "
                                                  "NOT c.relispartition AND a.attnum > 0 AND NOT a.attisdropped AND "
                                                  "c.relnamespace = 'public'::regnamespace"));
  std::set<std::string> out;
  for (std::string name; std::getline(names, name, '|');) out.insert(name);
  return out;
}

class Columns : public testing::TestWithParam<const char*> {};
INSTANTIATE_TEST_SUITE_P(Stores, Columns, testing::Values("SQLite", "PostgreSQL"),
                         [](const auto& one) { return std::string(one.param); });

TEST_P(Columns, EachHasAClass) {
  const Backend backend(GetParam());
  static_cast<void>(backend.open_gate());
  const auto columns = columns_of(backend);
  const Classes classes = classes_of(GetParam());
  EXPECT_GT(columns.size(), 80U) << "not all were looked at";
  for (const std::string& column : columns) {
    const auto found = classes.find(column);
    EXPECT_TRUE(found != classes.end() && !found->second.empty()) << column << " has no class";
  }
  for (const auto& [column, name] : classes) EXPECT_TRUE(columns.count(column)) << column << " is not there";
}

TEST_P(Columns, WhatMustNotBeSeenIsClassedSo) {
  const Classes classes = classes_of(GetParam());
  for (const char* column : {"account.password", "account.sealed_second", "recovery_code.code", "web_session.secret",
                             "pairing.secret", "pairing.device", "device.secret", "person.sealed_key"}) {
    EXPECT_EQ(classes.at(column), "secret") << column;
  }
  for (const char* column : {"entry.body", "quarantine.body"}) EXPECT_EQ(classes.at(column), "health") << column;
  for (const char* column : {"account.sign_in", "account.name", "read_note.player", "person.tag", "entry.person"}) {
    EXPECT_EQ(classes.at(column), "personal") << column;
  }
}

TEST(Columns, OfBothDatabasesHaveTheSameClass) {
  const Classes postgres = classes_of("PostgreSQL");
  for (const auto& [column, name] : classes_of("SQLite")) {
    ASSERT_TRUE(postgres.count(column)) << column;
    EXPECT_EQ(postgres.at(column), name) << column;
  }
}

TEST(Columns, OneWithoutAClassIsFound) {
  const Classes classes = classes_in(
      "CREATE TABLE t (\n  a TEXT NOT NULL, -- club: why\n  b TEXT,\n  c TEXT, -- clubs\n  d TEXT -- health\n);\n");
  EXPECT_EQ(classes, (Classes{{"t.a", "club"}, {"t.b", ""}, {"t.c", ""}, {"t.d", "health"}}));
}

}  // namespace
}  // namespace lanework::store
