// The book of who read what: in order, by player without the player's name, never changed, and a break is found.
#include <gtest/gtest.h>

#include "tests/store/gate_people.h"
#include "tests/store/raw_statements.h"

namespace lanework::store {
namespace {

using test::add;
using test::kMorning;
using test::must;
using test::pair;
using test::said;

class Reads : public test::GateOn {
 protected:
  std::string ann = add(*gate, "ann");

  bool note(const std::string& player, const std::string& device = "", Moment when = kMorning) {
    return must(gate->note_read({0, when, ann, device, "GET squad", "u13", player, 1, "not read"}));
  }
  std::string without_triggers() {
    return backend.where().empty()
               ? said(backend, "DROP TRIGGER read_note_is_not_changed; DROP TRIGGER read_note_is_not_deleted")
               : said(backend, "ALTER TABLE read_note DISABLE TRIGGER USER");
  }
};
INSTANTIATE_TEST_SUITE_P(Stores, Reads, testing::Values("SQLite", "PostgreSQL"), test::name_of);

TEST_P(Reads, ComeLatestFirstAndByPlayer) {
  const Device phone = pair(*gate, ann, "key");
  EXPECT_TRUE(note("Q07"));
  EXPECT_TRUE(must(gate->note_read({0, kMorning + 1, ann, "", "GET board", "", "", 12, ""})));
  EXPECT_TRUE(note("Q08", phone.id, kMorning + 2));
  EXPECT_TRUE(note("Q07", "", kMorning + 3));
  const auto again = backend.open_gate();
  const auto all = must(again->reads("", 10));
  ASSERT_EQ(all.size(), 4U);
  for (std::size_t i = 0; i < all.size(); ++i) EXPECT_EQ(all[i].number, static_cast<std::int64_t>(4 - i));
  EXPECT_EQ(all[0].player, "") << "what is kept is the tag";
  EXPECT_EQ(all[0].tag, again->tag_of("Q07"));
  EXPECT_EQ(all[1].tag, again->tag_of("Q08"));
  EXPECT_NE(all[0].tag, all[1].tag);
  EXPECT_EQ(all[0].tag.size(), 32U);
  EXPECT_EQ(all[1].device, phone.id);
  EXPECT_EQ(all[1].account, ann);
  EXPECT_EQ(all[1].route, "GET squad");
  EXPECT_EQ(all[1].squad, "u13");
  EXPECT_EQ(all[1].when, kMorning + 2);
  EXPECT_EQ(all[2].tag, "");
  EXPECT_EQ(all[2].squad, "");
  EXPECT_EQ(all[2].device, "");
  EXPECT_EQ(all[2].people, 12);
  const auto of = must(again->reads("Q07", 10));
  ASSERT_EQ(of.size(), 2U);
  EXPECT_EQ(of[0].number, 4);
  EXPECT_EQ(of[1].number, 1);
  EXPECT_EQ(of[0].player, "Q07");
  EXPECT_EQ(must(again->reads("Q07", 1)).front().number, 4);
  EXPECT_EQ(must(again->reads("", 0)).size(), 0U);
  EXPECT_EQ(must(again->reads("", static_cast<std::size_t>(-1))).size(), 4U);
  EXPECT_TRUE(must(again->reads("Q99", 10)).empty());
  EXPECT_EQ(must(again->audit_reads()).notes, 4);
  EXPECT_FALSE(must(again->audit_reads()).broken_at);
}

TEST_P(Reads, AreNotedOfThoseWhoAreThere) {
  EXPECT_FALSE(must(gate->note_read({0, kMorning, "a-0000000000000000", "", "r", "", "", 1, ""})));
  EXPECT_FALSE(note("Q07", "d-0000000000000000"));
  EXPECT_EQ(must(gate->audit_reads()).notes, 0);
  EXPECT_TRUE(note("Q07"));
  EXPECT_EQ(must(gate->reads("", 1)).front().number, 1);
}

TEST_P(Reads, AreNeitherChangedNorDeletedNorReplaced) {
  EXPECT_TRUE(note("Q07"));
  for (const char* statement : {"UPDATE read_note SET people = 2", "DELETE FROM read_note"}) {
    EXPECT_NE(said(backend, statement).find("read notes are never "), std::string::npos) << statement;
  }
  const std::string by_insert =
      backend.where().empty()
          ? "INSERT OR REPLACE INTO read_note SELECT club, number, noted, account, device, 'other', "
            "squad, player, people, link FROM read_note"
          : "TRUNCATE read_note";
  EXPECT_NE(said(backend, by_insert).find("read notes are never "), std::string::npos);
  EXPECT_EQ(said(backend, "SELECT route, people FROM read_note"), "GET squad|1|");
}

TEST_P(Reads, WhoeverChangesANoteBreaksTheChainThere) {
  for (const char* player : {"Q07", "", "Q08", "Q07"}) EXPECT_TRUE(note(player));
  without_triggers();
  EXPECT_EQ(said(backend, "UPDATE read_note SET people = 2 WHERE number = 3"), "");
  EXPECT_EQ(must(gate->audit_reads()).broken_at, 3);
  EXPECT_EQ(must(gate->audit_reads()).notes, 2);
  EXPECT_EQ(said(backend, "UPDATE read_note SET people = 1 WHERE number = 3"), "");
  EXPECT_FALSE(must(gate->audit_reads()).broken_at);
  EXPECT_EQ(said(backend, "UPDATE read_note SET player = NULL WHERE number = 1"), "");
  EXPECT_EQ(must(gate->audit_reads()).broken_at, 1);
}

TEST_P(Reads, WhoeverTakesANoteOutIsFoundAlsoAtTheEnd) {
  for (int i = 0; i < 4; ++i) EXPECT_TRUE(note("Q07"));
  without_triggers();
  EXPECT_EQ(said(backend, "DELETE FROM read_note WHERE number = 4"), "");
  EXPECT_EQ(must(gate->audit_reads()).broken_at, 4);
  EXPECT_EQ(said(backend, "DELETE FROM read_note WHERE number = 2"), "");
  EXPECT_EQ(must(gate->audit_reads()).broken_at, 2);
  EXPECT_EQ(said(backend, "DELETE FROM read_note"), "");
  EXPECT_EQ(must(gate->audit_reads()).broken_at, 1);
}

TEST_P(Reads, StayWhenTheRestIsForgotten) {
  EXPECT_TRUE(note("Q07", "", 1));
  must(gate->forget_before(kMorning, kMorning, kMorning));
  must(gate->end_account(ann, kMorning));
  EXPECT_EQ(must(gate->reads("", 9)).size(), 1U);
}

}  // namespace
}  // namespace lanework::store
