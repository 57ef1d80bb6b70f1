// What the board was given, on both databases.
#include "app/store/releases.h"

#include <gtest/gtest.h>

#include <fstream>
#include <sstream>
#include <thread>

#include "tests/store/raw_statements.h"

namespace lanework::store {
namespace {

using test::Backend;
using test::said;

const KeptRelease kFirst = {1, R"({"release":1})", R"({"whole":{"canary-of-counts":3}})"};
const KeptRelease kSecond = {2, R"({"release":2})", R"({"whole":{}})"};

class KeptReleases : public testing::TestWithParam<const char*> {};
INSTANTIATE_TEST_SUITE_P(Stores, KeptReleases, testing::Values("SQLite", "PostgreSQL"),
                         [](const auto& one) { return std::string(one.param); });

TEST_P(KeptReleases, AreThereAsTheyWereGivenInOrder) {
  const Backend backend(GetParam());
  const auto releases = backend.open_releases();
  EXPECT_TRUE(releases->all().value().empty());
  EXPECT_FALSE(releases->keep(kSecond).value()) << "the first is not there yet";
  EXPECT_TRUE(releases->keep(kFirst).value());
  EXPECT_TRUE(releases->keep(kSecond).value());
  EXPECT_EQ(backend.open_releases()->all().value(), (std::vector<KeptRelease>{kFirst, kSecond}));
}

TEST_P(KeptReleases, AreTakenOnceUnderOneNumber) {
  const Backend backend(GetParam());
  const auto releases = backend.open_releases();
  EXPECT_TRUE(releases->keep(kFirst).value());
  KeptRelease other = kFirst;
  other.shown = "{}";
  EXPECT_FALSE(releases->keep(other).value());
  EXPECT_EQ(releases->all().value(), std::vector<KeptRelease>{kFirst});
}

TEST_P(KeptReleases, OfManyAtOnceOneIsKept) {
  const Backend backend(GetParam());
  static_cast<void>(backend.open_releases());
  std::vector<int> kept(8, 0);
  std::vector<std::thread> all;
  for (int& one : kept) {
    all.emplace_back([&backend, &one] {
      const auto done = backend.open_releases()->keep(kFirst);
      one = done && done.value() ? 1 : 0;
    });
  }
  for (std::thread& one : all) one.join();
  EXPECT_EQ(std::count(kept.begin(), kept.end(), 1), 1);
  EXPECT_EQ(backend.open_releases()->all().value().size(), 1U);
}

TEST_P(KeptReleases, AreNeitherChangedNorDeletedAndWhatIsChangedAllTheSameDoesNotOpen) {
  const Backend backend(GetParam());
  ASSERT_TRUE(backend.open_releases()->keep(kFirst).value());
  for (const char* statement : {"UPDATE board_release SET shown = '{}'", "DELETE FROM board_release"}) {
    EXPECT_NE(said(backend, statement).find("releases are never"), std::string::npos) << statement;
  }
  const bool sqlite = backend.where().empty();
  said(backend, sqlite ? "DROP TRIGGER board_release_is_not_changed" : "ALTER TABLE board_release DISABLE TRIGGER ALL");
  said(backend, "UPDATE board_release SET shown = '{}'");
  EXPECT_FALSE(backend.open_releases()->all());
}

TEST_P(KeptReleases, WhatWasCountedDoesNotLieThereInTheClear) {
  const Backend backend(GetParam());
  ASSERT_TRUE(backend.open_releases()->keep(kFirst).value());
  if (!backend.where().empty()) GTEST_SKIP() << "SQLite's file is looked through byte by byte";
  std::string bytes;
  for (const char* end : {"", "-wal"}) {
    std::ifstream in(backend.file().file("quillmere") + end, std::ios::binary);
    std::ostringstream all;
    all << in.rdbuf();
    bytes += all.str();
  }
  EXPECT_NE(bytes.find(R"({"release":1})"), std::string::npos) << "the file was read";
  EXPECT_EQ(bytes.find("canary-of-counts"), std::string::npos);
}

}  // namespace
}  // namespace lanework::store
