// Each column of each table that a store makes has a class, in the comment beside it: who may see what lies there, and
// how it must lie there, follows from it (docs/model/gate.md).
#include <gtest/gtest.h>

#include <cctype>
#include <map>
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

bool is_class(const std::string& word) {
  static const std::set<std::string> kWords = {"public", "club", "personal", "health", "secret"};
  return kWords.count(word) > 0;
}

std::string class_beside(const std::string& line) {
  const std::size_t comment = line.find(" -- ");
  const std::string words = comment == std::string::npos ? "" : line.substr(comment + 4);
  const std::string word = words.substr(0, words.find(": "));
  return is_class(word) ? word : "";
}

// The migrations are ours: a column a line, two blanks and its name first, '-- class' or '-- class: why' last.
Classes classes_in(const std::string& sql) {
  Classes out;
  std::istringstream lines(sql);
  std::string table;
  for (std::string line; std::getline(lines, line);) {
    if (line.rfind("CREATE TABLE ", 0) == 0 && line.back() == '(') {
      std::istringstream words(line.substr(0, line.size() - 1));
      while (words >> table) continue;  // its name is the last
    } else if (line.rfind("ALTER TABLE ", 0) == 0 && line.find(" ADD COLUMN ") != std::string::npos) {
      std::istringstream words(line);
      std::string altered;
      std::string added;
      words >> added >> added >> altered >> added >> added >> added;  // ALTER TABLE t ADD COLUMN c
      out[altered + "." + added] = class_beside(line);
    } else if (line.rfind(')', 0) == 0) {
      table.clear();
    } else if (!table.empty() && line.size() > 2 && std::islower(static_cast<unsigned char>(line[2])) != 0) {
      out[table + "." + line.substr(2, line.find(' ', 2) - 2)] = class_beside(line);
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
  for (const char* column :
       {"account.password", "account.sealed_second", "recovery_code.code", "web_session.secret", "pairing.secret",
        "pairing.device", "device.secret", "calendar_link.secret", "person.sealed_key"}) {
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
