#include "core/ledger/timeline.h"

#include <gtest/gtest.h>

#include "core/ledger/consent.h"
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

std::string consent(const std::string& fields) {
  const auto lines = entered_about({one(1, "consent", R"("player":"Q07",)" + fields)});
  return lines.at(0).what;
}

TEST(Timeline, AConsentIsSaidInPlainWords) {
  EXPECT_EQ(consent(R"("purpose":"injury-record","by":"guardian","answer":"given","day":"2026-09-01")"),
            "consent to keep a record of injuries and screens: given by a guardian on 2026-09-01");
  EXPECT_EQ(
      consent(R"("purpose":"statistics","by":"guardian","guardian":"second","answer":"withdrawn","day":"2026-10-02")"),
      "consent to be counted in the club's statistics: withdrawn by the second guardian on 2026-10-02");
  EXPECT_EQ(
      consent(R"("purpose":"training","by":"player","answer":"refused","day":"2026-10-02",)"
              R"("text_version":"autumn-2","language":"de")"),
      "consent to take part in training: refused by the player on 2026-10-02; text version autumn-2; language de");
  // Of a later version: in the ledger's words rather than in none.
  Received later =
      one(1, "consent", R"("player":"Q07","purpose":"training","by":"guardian","answer":"given","day":"2026-10-02")");
  later.entry.whole.set("purpose", Node::make_text("photographs"));
  EXPECT_EQ(entered_about({later}).at(0).what,
            "consent: purpose photographs; by guardian; answer given; day 2026-10-02");
}

TEST(Timeline, EveryPurposeThatIsAskedHasPlainWords) {
  const auto all = purposes(shipped_kinds());
  ASSERT_FALSE(all.empty());
  for (const std::string& purpose : all) {
    const std::string line =
        consent("\"purpose\":\"" + purpose + R"(","by":"guardian","answer":"given","day":"2026-09-01")");
    EXPECT_EQ(line.rfind("consent to ", 0), 0U) << line;
  }
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
