// The turn of a season on a club small enough to follow by hand.
#include "core/club/turn.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/club/sample_club.h"

namespace lanework::club::test {
namespace {

using session::Weekday;

Node date_table(const char* from, const char* from_day, const char* to, const char* to_day) {
  Node table = Node::make_table();
  table.set(from, Node::make_text(from_day));
  table.set(to, Node::make_text(to_day));
  return table;
}

struct SmallClub {
  Club club = empty_club();
  ClubDocuments documents;

  SmallClub() {
    Node& root = documents.club.root;
    root = Node::make_table();
    root.set("name", Node::make_text("Quillmere Juniors"));
    root.set("season", date_table("from", "2026-08-31", "to", "2027-06-27"));
    Node block = Node::make_table();
    block.set("first_monday", Node::make_text("2026-11-23"));
    root.set("block", std::move(block));
    root.set("holiday", Node::make_array());
  }

  ClubSquad& add(const std::string& id, const std::string& name, const std::string& label) {
    ClubSquad& squad = add_squad(club, id, {slot(Weekday::kTuesday, "18:00", 20)});
    squad.squad.name = name;
    squad.squad.in_roster = label;
    for (people::Player& player : squad.players) player.squads = {label};
    SquadDocuments from;
    from.id = id;
    from.squad.root = Node::make_table();
    from.squad.root.set("name", Node::make_text(name));
    from.squad.root.set("routine", Node::make_text(squad.routine.id));
    from.squad.root.set("slot", Node::make_table());
    documents.squads.push_back(std::move(from));
    return squad;
  }

  NextSeason turned() {
    std::sort(club.squads.begin(), club.squads.end(),
              [](const ClubSquad& a, const ClubSquad& b) { return a.id < b.id; });
    return turn_season(documents, club);
  }
};

bool told(const NextSeason& next, const std::string& sentence) {
  return std::any_of(next.told.begin(), next.told.end(),
                     [&](const TurnTold& told) { return sentence_of(told) == sentence; });
}

TEST(SeasonTurn, EverythingIsAYearOn) {
  SmallClub small;
  small.add("u13-kestrels", "Under-13 Kestrels", "U13").squad.taught["squat"].times = 7;
  const NextSeason next = small.turned();
  ASSERT_EQ(next.squads.size(), 1U);
  EXPECT_EQ(next.squads[0].first, "u14-kestrels");
  const Node& squad = next.squads[0].second.root;
  EXPECT_EQ(squad.find("name")->text, "Under-14 Kestrels");
  EXPECT_EQ(squad.find("in_roster")->text, "U14");
  EXPECT_EQ(squad.find("slot"), nullptr);
  EXPECT_EQ(squad.find("taught")->find("squat")->integer, 7);
  EXPECT_EQ(next.club.root.find("season")->find("from")->text, "2027-08-31");
  EXPECT_EQ(next.club.root.find("season")->find("to")->text, "2028-06-27");
  EXPECT_EQ(next.club.root.find("block")->find("first_monday")->text, "2027-09-06");
  EXPECT_EQ(next.club.root.find("holiday"), nullptr);
  ASSERT_EQ(next.roster.size(), 10U);
  EXPECT_EQ(next.roster[0].squads, std::vector<std::string>{"U14"});
  EXPECT_TRUE(told(next, "Under-13 Kestrels becomes Under-14 Kestrels."));
  EXPECT_TRUE(told(next, "What Under-13 Kestrels was taught goes to Under-14 Kestrels, with 10 of its 10 players."));
}

TEST(SeasonTurn, WhoIsTooOldGoesWhereTheAgeFits) {
  SmallClub small;
  ClubSquad& wrens = small.add("u11-wrens", "Under-11 Wrens", "U11 Girls");
  for (people::Player& player : wrens.players) player.birth = day("2016-01-10");
  wrens.players[0].birth = day("2014-06-01");  // 13 on 31 August 2027
  small.add("u13-hawks", "Under-13 Hawks", "U13 Boys");
  small.add("u13-kestrels", "Under-13 Kestrels", "U13 Girls");
  const NextSeason next = small.turned();
  const auto moved = std::find_if(next.roster.begin(), next.roster.end(),
                                  [](const people::Player& player) { return player.id == "u11-wrens-1"; });
  ASSERT_NE(moved, next.roster.end());
  EXPECT_EQ(moved->squads, std::vector<std::string>{"U14 Girls"});
  EXPECT_TRUE(told(next, "u11-wrens-1 is too old for Under-12 Wrens and goes to Under-14 Kestrels."));
}

TEST(SeasonTurn, HistoryGoesWithMostPlayersAndMeetsAtTheLess) {
  SmallClub small;
  ClubSquad& wrens = small.add("u11-wrens", "Under-11 Wrens", "U11");
  for (int i = 0; i < 10; ++i)
    wrens.players[static_cast<std::size_t>(i)].birth = day(i < 6 ? "2014-06-01" : "2016-01-10");
  wrens.squad.taught["squat"].times = 2;
  wrens.squad.taught["bridge"].times = 5;
  ClubSquad& kestrels = small.add("u13-kestrels", "Under-13 Kestrels", "U13");
  kestrels.squad.taught["squat"].times = 9;
  kestrels.squad.taught["strides"].times = 4;
  const NextSeason next = small.turned();
  ASSERT_EQ(next.squads.size(), 2U);
  EXPECT_EQ(next.squads[0].second.root.find("taught"), nullptr);
  const Node* taught = next.squads[1].second.root.find("taught");
  ASSERT_NE(taught, nullptr);
  EXPECT_EQ(taught->entries.size(), 1U);
  EXPECT_EQ(taught->find("squat")->integer, 2);
  EXPECT_TRUE(told(next, "What Under-11 Wrens was taught goes to Under-14 Kestrels, with 6 of its 10 players."));
}

TEST(SeasonTurn, TheOldestLeaveAndTheyAreNamed) {
  SmallClub small;
  ClubSquad& ospreys = small.add("u19-ospreys", "Under-19 Ospreys", "U19");
  for (people::Player& player : ospreys.players) player.birth = day("2008-01-01");
  ospreys.players[4].squads = {"U19", "U13"};
  small.add("u13-kestrels", "Under-13 Kestrels", "U13");
  const NextSeason next = small.turned();
  EXPECT_EQ(next.squads.size(), 1U);
  EXPECT_EQ(next.roster.size(), 10U);
  EXPECT_TRUE(told(next, "Under-19 Ospreys ends: nobody plays for a squad above Under-19."));
}

TEST(SeasonTurn, ASquadThatNobodyGoesToEnds) {
  SmallClub small;
  ClubSquad& wrens = small.add("u11-wrens", "Under-11 Wrens", "U11");
  for (people::Player& player : wrens.players) player.birth = day("2014-06-01");
  wrens.squad.taught["squat"].times = 3;
  small.add("u13-kestrels", "Under-13 Kestrels", "U13");
  const NextSeason next = small.turned();
  ASSERT_EQ(next.squads.size(), 1U);
  EXPECT_EQ(next.roster.size(), 20U);
  EXPECT_TRUE(told(next, "Under-12 Wrens has nobody and ends."));
  // The Kestrels were taught nothing, so it is new to half of them.
  EXPECT_EQ(next.squads[0].second.root.find("taught"), nullptr);
}

TEST(SeasonTurn, NoTwoSquadsGetOneFile) {
  SmallClub small;
  small.add("u13-x", "Under-13 X", "U13");
  small.add("u14-x", "Under-13 Y", "U13 Y");
  const NextSeason next = small.turned();
  ASSERT_EQ(next.squads.size(), 2U);
  EXPECT_NE(next.squads[0].first, next.squads[1].first);
}

TEST(SeasonTurn, RestrictionsFollowWhoStays) {
  SmallClub small;
  small.add("u13-kestrels", "Under-13 Kestrels", "U13");
  auto restrictions = parse_toml("restrictions.toml",
                                 "as_known = \"Sunday\"\n[[restriction]]\nplayer = \"u13-kestrels-2\"\n"
                                 "[[restriction]]\nplayer = \"gone\"\n[[restriction]]\nsquad = \"U13\"\n");
  small.documents.squads[0].restrictions = restrictions.value();
  const NextSeason next = small.turned();
  const Node* list = next.restrictions.root.find("restriction");
  ASSERT_EQ(list->items.size(), 2U);
  EXPECT_EQ(list->items[1].find("squad")->text, "U14");
  EXPECT_EQ(next.restrictions.root.find("as_known")->text, "Sunday");
}

}  // namespace
}  // namespace lanework::club::test
