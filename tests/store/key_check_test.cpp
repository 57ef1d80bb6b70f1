// With another key nothing opens: at once, in one line, and nothing is taken in.
#include <gtest/gtest.h>

#include <functional>

#include "tests/ledger/shipped_kinds.h"
#include "tests/store/backend.h"
#include "tests/store/raw_statements.h"

namespace lanework::store {
namespace {

using test::Backend;

const std::string kNow = "2026-11-26T18:05:00+01:00";

class KeyCheck : public testing::TestWithParam<const char*> {
 protected:
  Backend backend{GetParam()};

  // What is said by each of those that open a store; empty: it opened.
  std::vector<std::string> said_of(const std::function<Key()>& key) {
    const bool sqlite = backend.where().empty();
    const std::string file = backend.file().file("quillmere");
    const auto line = [](const auto& opened) { return opened ? std::string() : to_line(opened.faults().front()); };
    return {line(sqlite ? open_sqlite_store(file, key()) : open_postgres_store(backend.where(), "quillmere", key())),
            line(sqlite ? open_sqlite_gate(file, key()) : open_postgres_gate(backend.where(), "quillmere", key())),
            line(sqlite ? open_sqlite_directory(file, key())
                        : open_postgres_directory(backend.where(), "quillmere", key()))};
  }
  void forget_check() {
    const char* sql = "DELETE FROM key_check";
    if (backend.where().empty()) {
      test::Raw(backend.file().file("quillmere")).run(sql);
    } else {
      test::said(backend.where(), sql);
    }
  }
};

INSTANTIATE_TEST_SUITE_P(Stores, KeyCheck, testing::Values("SQLite", "PostgreSQL"),
                         [](const auto& one) { return std::string(one.param); });

TEST_P(KeyCheck, AnotherKeyOpensNeitherAnEmptyStoreNorOneWithPeople) {
  const auto own = [&] { return read_key_file(backend.file().key_file()).value(); };
  auto store = backend.open();
  for (const bool with_people : {false, true}) {
    if (with_people) {
      const auto entry = ledger::test::read(ledger::test::entry_text(1, "hurt", R"("player":"Q07")", 1)).value();
      ASSERT_TRUE(store->take_in({"phone-1", "ann", ledger::Role::kCoach, false}, {entry},
                                 ledger::test::shipped_kinds(), kNow));
    }
    for (const std::string& said : said_of(Key::made)) {
      EXPECT_NE(said.find("a key that is not this store's"), std::string::npos) << said;
      EXPECT_NE(said.find("--key"), std::string::npos) << said;
      EXPECT_EQ(said.find('\n'), std::string::npos) << said;
      if (backend.where().empty()) {
        EXPECT_NE(said.find(backend.file().file("quillmere")), std::string::npos) << said;
      }
    }
    for (const std::string& said : said_of(own)) EXPECT_EQ(said, "");
  }
}

// One that an older version made says by its people whose it is, and from then on by itself.
TEST_P(KeyCheck, AStoreFromBeforeIsKnownByItsPeople) {
  const auto entry = ledger::test::read(ledger::test::entry_text(1, "hurt", R"("player":"Q07")", 1)).value();
  ASSERT_TRUE(backend.open()->take_in({"phone-1", "ann", ledger::Role::kCoach, false}, {entry},
                                      ledger::test::shipped_kinds(), kNow));
  forget_check();
  for (const std::string& said : said_of(Key::made))
    EXPECT_NE(said.find("not this store's"), std::string::npos) << said;
  static_cast<void>(backend.open());
  for (const std::string& said : said_of(Key::made))
    EXPECT_NE(said.find("not this store's"), std::string::npos) << said;
}

}  // namespace
}  // namespace lanework::store
