#include <gtest/gtest.h>

#include <set>

#include "core/access/viewer.h"
#include "tests/access/shipped_matrix.h"

namespace lanework::access {
namespace {

using ledger::Role;
using ledger::test::entry_text;
using ledger::test::shipped_kinds;
using test::shipped_matrix;

const Date kToday = *parse_iso_date("2026-11-26");
const SquadsOfPlayer kPlayers = {{"Q07", {"u13"}}, {"Q20", {"u16"}}, {"Q30", {"u13", "u16"}}};

Viewer viewer(Role role, const std::string& account = "ann", bool substitute = false,
              Date until = *parse_iso_date("2027-06-30")) {
  return {account, role, {{"u13", *parse_iso_date("2026-08-01"), until, substitute}}, kToday};
}

ledger::Received entry(const std::string& kind, const std::string& fields, const std::string& author = "bea") {
  return {ledger::test::read(entry_text(1, kind, fields)).value(),
          7,
          "2026-11-26T18:05:00+01:00",
          "phone",
          author,
          Role::kCoach};
}

std::set<std::string> keys(const std::optional<Node>& node) {
  std::set<std::string> out;
  if (node) {
    for (const auto& [key, value] : node->entries) out.insert(key);
  }
  return out;
}

std::set<std::string> seen(const ledger::Received& received, const Viewer& by) {
  return keys(visible_entry(received, kToday, by, shipped_matrix(), shipped_kinds(), kPlayers));
}

const std::string kSession = R"("squad":"u13","day":"2026-11-26","start":"18:00")";
const std::set<std::string> kWrapUp = {"id",  "sequence", "device_time", "kind",    "squad",
                                       "day", "start",    "happened",    "receipt", "received"};

TEST(Viewer, ACoachSeesTheirOwnSquadsEvenings) {
  const auto wrapped = entry("wrap-up", kSession + R"(,"happened":"held")");
  EXPECT_EQ(seen(wrapped, viewer(Role::kCoach)), kWrapUp);
  EXPECT_EQ(seen(wrapped, viewer(Role::kLead)), kWrapUp);
  EXPECT_TRUE(seen(wrapped, viewer(Role::kRecorder)).empty());
  EXPECT_TRUE(seen(wrapped, viewer(Role::kBoard)).empty());
  EXPECT_TRUE(seen(wrapped, viewer(Role::kOperator)).empty());
  const auto other = entry("wrap-up", R"("squad":"u16","day":"2026-11-26","start":"18:00","happened":"held")");
  EXPECT_TRUE(seen(other, viewer(Role::kCoach)).empty());
}

TEST(Viewer, WhoeverHadTheSquadBeforeSeesNothingOfItAnyMore) {
  const Viewer former = viewer(Role::kCoach, "ann", false, *parse_iso_date("2026-11-25"));
  EXPECT_TRUE(
      seen(entry("wrap-up", R"("squad":"u13","day":"2026-11-20","start":"18:00","happened":"held")"), former).empty());
}

TEST(Viewer, ASubstituteSeesTheEveningAndNoMore) {
  const Viewer substitute = viewer(Role::kCoach, "ann", true, kToday);
  EXPECT_EQ(seen(entry("wrap-up", kSession + R"(,"happened":"held")"), substitute), kWrapUp);
  EXPECT_TRUE(
      seen(entry("exposure-confirmed", kSession + R"(,"setting":"training","minutes":60,"players":12)"), substitute)
          .empty());
}

TEST(Viewer, WhatIsAboutAPlayersBodyGoesToTheLeadAndOnTheDayBackToWhoWroteIt) {
  const auto hurt = entry("hurt", R"("player":"Q07","place":"knee")", "ann");
  EXPECT_TRUE(seen(hurt, viewer(Role::kLead, "lee")).count("place"));
  EXPECT_TRUE(seen(hurt, viewer(Role::kCoach, "ann")).count("place"));
  EXPECT_TRUE(seen(hurt, viewer(Role::kCoach, "bea")).empty());
  const auto tomorrow = visible_entry(hurt, Date{kToday.days_since_epoch - 1}, viewer(Role::kCoach, "ann"),
                                      shipped_matrix(), shipped_kinds(), kPlayers);
  EXPECT_FALSE(tomorrow);
  const auto restriction = entry("restriction", R"("player":"Q07","sits_out":true)", "lee");
  EXPECT_TRUE(seen(restriction, viewer(Role::kCoach, "ann")).empty());
}

TEST(Viewer, APlayerOfNobodysListIsTheLeadsOnly) {
  const auto hurt = entry("hurt", R"("player":"Q99","place":"knee")");
  EXPECT_FALSE(seen(hurt, viewer(Role::kLead)).empty());
  EXPECT_TRUE(seen(hurt, viewer(Role::kCoach)).empty());
}

TEST(Viewer, AKindOfANewerVersionIsTheLeadsAndItsAuthors) {
  const auto newer = entry("weather-felt", kSession + R"(,"mood":"wet")", "ann");
  EXPECT_TRUE(seen(newer, viewer(Role::kLead, "lee")).count("mood"));
  EXPECT_TRUE(seen(newer, viewer(Role::kCoach, "ann")).count("mood"));
  EXPECT_TRUE(seen(newer, viewer(Role::kCoach, "bea")).empty());
}

TEST(Viewer, AKeyThatNobodyKnowsIsTheLeadsOnly) {
  const auto wrapped = entry("wrap-up", kSession + R"(,"happened":"held","diagnosis":"x","birth":"2014-01-01")");
  EXPECT_EQ(seen(wrapped, viewer(Role::kCoach)), kWrapUp);
  EXPECT_TRUE(seen(wrapped, viewer(Role::kLead)).count("diagnosis"));
}

TEST(Viewer, APlayerOfTwoSquadsIsBothCoaches) {
  EXPECT_EQ(relation_to_any(viewer(Role::kCoach),
                            squads_of(entry("hurt", R"("player":"Q30")").entry, shipped_kinds(), kPlayers), kToday),
            Relation::kOwn);
  EXPECT_EQ(relation_to_any(viewer(Role::kCoach),
                            squads_of(entry("hurt", R"("player":"Q20")").entry, shipped_kinds(), kPlayers), kToday),
            Relation::kOther);
}

// Every cell: role x relation x kind x field, for entries that somebody else wrote and for one's own.
TEST(Viewer, EveryCellOfTheMatrixIsKept) {
  int cells = 0;
  for (const ledger::Kind& kind : shipped_kinds().kinds) {
    const FieldRules& rules = *shipped_matrix().kind(kind.key);
    for (std::size_t role = 0; role < kRoleCount; ++role) {
      for (const bool mine : {false, true}) {
        for (const char* squad : {"u13", "u16"}) {
          ledger::Received received;
          received.entry.kind = kind.key;
          received.entry.whole = Node::make_table();
          received.entry.whole.set("kind", Node::make_text(kind.key));
          received.entry.whole.set("squad", Node::make_text(squad));
          received.entry.whole.set("day", Node::make_text("2026-11-26"));
          received.entry.whole.set("player", Node::make_text(squad == std::string("u13") ? "Q07" : "Q20"));
          for (const ledger::Field& field : kind.fields) received.entry.whole.set(field.key, Node::make_text("x"));
          received.author = mine ? "ann" : "bea";
          const Viewer by = viewer(static_cast<Role>(role));
          const auto got = seen(received, by);
          const bool coach_entry = kind.about == ledger::About::kCoach;
          const Relation relation = coach_entry ? (by.role == Role::kLead ? Relation::kOwn : Relation::kOther)
                                                : relation_of(by, squad, kToday);
          for (const ledger::Field& field : kind.fields) {
            const bool wanted = sees(rules.field("envelope")->sees[role], relation, mine) &&
                                sees(rules.field(field.key)->sees[role], relation, mine);
            const bool shared =
                field.key == "squad" || field.key == "day" || field.key == "player";  // set above for every kind
            EXPECT_TRUE(shared || (got.count(field.key) > 0) == wanted)
                << kind.key << '.' << field.key << " role " << role;
            ++cells;
          }
        }
      }
    }
  }
  EXPECT_GT(cells, 1000);
}

}  // namespace
}  // namespace lanework::access
