#include "app/serve/standing.h"

#include <gtest/gtest.h>

#include "tests/ledger/shipped_kinds.h"
#include "tests/serve/house_of_test.h"

namespace lanework::serve {
namespace {

using ledger::Role;
using ledger::test::entry_text;
using ledger::test::shipped_kinds;

const Date kToday = *parse_iso_date("2026-11-27");

ledger::Received received(int n, const std::string& kind, const std::string& fields, Role role = Role::kCoach) {
  return {
      ledger::test::read(entry_text(n, kind, fields, n)).value(), n, "2026-11-26T18:05:00+01:00", "d-1", "a-1", role};
}

SquadStanding standing(std::vector<ledger::Received> entries) {
  return standing_from(std::move(entries), shipped_kinds(), test::shipped_care(), {"Q07", "Q08"}, kToday);
}

TEST(Standing, WhoeverNothingIsKnownOfJoinsIn) {
  const SquadStanding none = standing({});
  ASSERT_EQ(none.players.size(), 2U);
  EXPECT_EQ(none.players[0].word, "joins in");
  EXPECT_TRUE(none.known_at.empty());
}

TEST(Standing, AHurtPlayerSitsOutAndTheCoachReadsNoReason) {
  const SquadStanding hurt = standing({received(1, "hurt", R"("player":"Q07","place":"knee")")});
  EXPECT_EQ(hurt.players[0].word, "sits out, see a clinician");
  EXPECT_EQ(hurt.players[1].word, "joins in");
  for (const std::string& words : hurt.players[0].instructions)
    EXPECT_EQ(words.find("knee"), std::string::npos) << words;
  EXPECT_FALSE(hurt.players[0].reasons.empty());
  EXPECT_FALSE(hurt.known_at.empty());
}

TEST(Standing, ARestrictionGivesSwapsUntilItsDay) {
  const SquadStanding swaps = standing(
      {received(1, "restriction",
                R"("player":"Q07","kinds":["impact"],"until":"2026-12-03","instruction":"no jumping")", Role::kLead)});
  EXPECT_EQ(swaps.players[0].word, "joins in with swaps");
  EXPECT_EQ(swaps.players[0].until, parse_iso_date("2026-12-03"));
}

TEST(Standing, WhatCannotBeUnderstoodHoldsBackAndSpoilsNothing) {
  const SquadStanding odd = standing({received(1, "hurt", R"("player":"Q07","place":"no-such-place")"),
                                      received(2, "soreness", R"("player":"Q08","place":"knee","before":2)")});
  EXPECT_EQ(odd.players[0].word, "sits out, see a clinician");
  EXPECT_NE(odd.players[1].word, "sits out, see a clinician");
}

TEST(Standing, WhatWouldLiftAndCannotBeUnderstoodLiftsNothing) {
  const std::string hurt = ledger::to_text(ledger::test::id_of(1));
  const SquadStanding still =
      standing({received(1, "hurt", R"("player":"Q07","place":"knee")"),
                received(2, "lifted", R"("player":"Q07","names":[")" + hurt + R"("])", Role::kLead)});
  EXPECT_EQ(still.players[0].word, "sits out, see a clinician") << "no clearance of a named clinician";
}

}  // namespace
}  // namespace lanework::serve
