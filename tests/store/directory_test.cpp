// The club's lists, on both databases.
#include <gtest/gtest.h>

#include <fstream>
#include <sstream>

#include "tests/store/backend.h"

namespace lanework::store {
namespace {

using test::Backend;

const std::string kNow = "2026-11-26T18:05:00+01:00";

Lists lists() {
  return {"Quillmere Juniors",
          {{"u13", "Under-13"}, {"u16", "Under-16"}},
          {{"Q01", {"u13"}, "Amara", "under 13"}, {"Q02", {"u13", "u16"}, "Bjørn", ""}}};
}

class Directories : public testing::TestWithParam<const char*> {};
INSTANTIATE_TEST_SUITE_P(Stores, Directories, testing::Values("SQLite", "PostgreSQL"),
                         [](const auto& one) { return std::string(one.param); });

TEST_P(Directories, KeepWhatWasHandedInAndCountTheChange) {
  const Backend backend(GetParam());
  const auto directory = backend.open_directory();
  EXPECT_EQ(directory->versions().value().lists, 0);
  EXPECT_EQ(directory->lists().value(), (Lists{}));
  EXPECT_EQ(directory->keep(lists(), kNow).value(), 0);
  EXPECT_EQ(directory->lists().value(), lists());
  const auto version = directory->versions().value().lists;
  EXPECT_GT(version, 0);
  Lists fewer = lists();
  fewer.players.pop_back();
  fewer.squads.pop_back();
  EXPECT_EQ(directory->keep(fewer, kNow).value(), 0);
  EXPECT_EQ(backend.open_directory()->lists().value(), fewer);
  EXPECT_GT(directory->versions().value().lists, version);
}

TEST_P(Directories, AnErasedPersonIsOnNoListAnyMoreAndComesOnNoneAgain) {
  const Backend backend(GetParam());
  const auto directory = backend.open_directory();
  ASSERT_TRUE(directory->keep(lists(), kNow));
  ASSERT_TRUE(backend.open()->erase_person("Q01", kNow, test::kNoNote).value());
  EXPECT_EQ(directory->lists().value().players.size(), 1U) << "the key is gone: the name can no longer be read";
  const auto before = directory->versions().value().lists;
  EXPECT_TRUE(directory->forget("Q01").value());
  EXPECT_FALSE(directory->forget("Q01").value());
  EXPECT_GT(directory->versions().value().lists, before);
  EXPECT_EQ(directory->keep(lists(), kNow).value(), 1) << "left out";
  EXPECT_EQ(directory->lists().value().players.size(), 1U);
}

TEST_P(Directories, EveryDatabaseAndEveryClubHasAnIdOfItsOwn) {
  const Backend backend(GetParam());
  const auto id = backend.open_directory()->ledger_id().value();
  EXPECT_EQ(id.size(), 32U);
  EXPECT_EQ(backend.open_directory()->ledger_id().value(), id);
  const Backend other(GetParam());
  EXPECT_NE(other.open_directory()->ledger_id().value(), id);
}

TEST_P(Directories, NamesDoNotLieThereInTheClear) {
  const Backend backend(GetParam());
  ASSERT_TRUE(backend.open_directory()->keep(lists(), kNow));
  if (!backend.where().empty()) GTEST_SKIP() << "SQLite's file is looked through byte by byte";
  std::string bytes;
  for (const char* end : {"", "-wal"}) {
    std::ifstream in(backend.file().file("quillmere") + end, std::ios::binary);
    std::ostringstream all;
    all << in.rdbuf();
    bytes += all.str();
  }
  ASSERT_NE(bytes.find("Quillmere Juniors"), std::string::npos)
      << "the club's own name is no secret: the file was read";
  for (const char* canary : {"Amara", "Bj\xC3\xB8rn", "Q01", "under 13"}) {
    EXPECT_EQ(bytes.find(canary), std::string::npos) << canary;
  }
}

}  // namespace
}  // namespace lanework::store
