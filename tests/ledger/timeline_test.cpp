#include "core/ledger/timeline.h"

#include <gtest/gtest.h>

#include "tests/ledger/shipped_kinds.h"

namespace lanework::ledger {
namespace {

using test::about_session;
using test::entry_text;
using test::received;
using test::shipped_kinds;

Received one(int n, const std::string& kind, const std::string& fields) {
  return received(n, test::read(entry_text(n, kind, fields, n)).value());
}

TEST(Timeline, EveryEntryIsALineWithAllThatItSays) {
  const auto lines = entered_about(
      {one(1, "soreness", R"("player":"Q07","place":"knee","before":3,"signs":["limp","swelling"])"),
       one(2, "withdrawn", R"("player":"Q07",)" + test::corrects(1)),
       one(4, "lifted",
           R"("player":"Q07","names":[")" + to_text(test::id_of(1)) + R"(",")" + to_text(test::id_of(9)) + "\"]"),
       one(3, "of-a-newer-version", R"("player":"Q07","mood":"wet","deep":{"a":1})")});
  ASSERT_EQ(lines.size(), 4U);
  EXPECT_EQ(lines[0].what, "soreness: place knee; before 3; signs limp, swelling");
  EXPECT_EQ(lines[0].author, "ann");
  EXPECT_EQ(lines[1].what, "withdrawn (corrects the soreness of 2026-11-26 18:05)");
  EXPECT_EQ(lines[2].what, "lifted: names the soreness of 2026-11-26 18:05, an entry that is not on this page");
  EXPECT_EQ(lines[3].what, R"(of a newer version: mood wet; deep {"a":1})");
}

TEST(Timeline, OnlyTheEveningsThatNameTheChild) {
  const std::vector<Received> evenings = {
      one(1, "attendance", about_session(R"("there":2,"players":["Q07","Q08"])")),
      one(2, "wrap-up", about_session(R"("happened":"held","did_it":"most","minutes":19)")),
      one(3, "attendance", R"("squad":"u13","day":"2026-11-27","start":"18:00","there":1,"players":["Q08"])"),
      one(4, "attendance", R"("squad":"u13","day":"2026-11-28","start":"18:00","there":9)")};
  const auto lines = counted_at(evenings, "Q07", shipped_kinds());
  ASSERT_EQ(lines.size(), 1U);
  EXPECT_EQ(lines[0].what, "there at the warm-up of u13, 2026-11-26 18:00: held, most did it, 19 min");
  EXPECT_EQ(counted_at(evenings, "Q08", shipped_kinds()).size(), 2U);
  EXPECT_TRUE(counted_at(evenings, "Q09", shipped_kinds()).empty());
}

TEST(Timeline, ACorrectedCountIsTheOneThatCounts) {
  const std::vector<Received> evenings = {
      one(1, "attendance", about_session(R"("there":1,"players":["Q07"])")),
      one(2, "attendance", about_session(R"("there":1,"players":["Q08"],)" + test::corrects(1)))};
  EXPECT_TRUE(counted_at(evenings, "Q07", shipped_kinds()).empty());
  EXPECT_EQ(counted_at(evenings, "Q08", shipped_kinds()).size(), 1U);
}

}  // namespace
}  // namespace lanework::ledger
