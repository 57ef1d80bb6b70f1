// Another turnout, other minutes, another place, a sore player: the plan changes where it must, and nowhere else.
#include <gtest/gtest.h>

#include <algorithm>

#include "tests/door/demo.h"

namespace lanework::door::test {
namespace {

// Drills of the request that need a wall, whole or on every rung.
bool needs_wall(Node& request, const std::string& id) {
  const auto wants = [](const Node& node) {
    const Node* needs = node.find("needs");
    return needs != nullptr &&
           std::any_of(needs->items.begin(), needs->items.end(), [](const Node& need) { return need.text == "wall"; });
  };
  for (const Node& drill : at(request, "catalogue.drills").items) {
    if (drill.find("id")->text != id) continue;
    const std::vector<Node>& rungs = drill.find("rung")->items;
    return wants(drill) || std::all_of(rungs.begin(), rungs.end(), wants);
  }
  throw std::invalid_argument(id);
}

TEST(AnotherEvening, MoreMinutesNeverHurt) {
  for (const char* squad : kSquads) {
    Node request = demo_request(squad);
    std::array<std::int64_t, 4> before{};
    std::size_t out_before = 0;
    bool any = false;
    for (int minutes = 6; minutes <= 30; ++minutes) {
      put(request, "squad.slot.minutes", number(minutes));
      const Node answer = planned(request);
      if (answer.find("objective") == nullptr) {
        EXPECT_FALSE(any) << squad << ": " << minutes << " min have no session, fewer had";
        continue;
      }
      if (any) {
        EXPECT_LE(levels(answer), before) << squad << " at " << minutes << " min";
        EXPECT_LE(left_out(answer).size(), out_before) << squad << " at " << minutes << " min";
      }
      any = true;
      before = levels(answer);
      out_before = left_out(answer).size();
    }
    EXPECT_EQ(before, (std::array<std::int64_t, 4>{0, 0, 0, 0})) << squad << ": half an hour holds the routine";
  }
}

TEST(AnotherEvening, MorePlayersTakeLongerAndFewerNeverCostADrill) {
  Node request = demo_request("u13-kestrels.toml");
  put(request, "squad.tonight.late", number(0));
  put(request, "squad.slot.minutes", number(17));
  std::array<std::int64_t, 4> before{};
  for (int turnout = 6; turnout <= 30; turnout += 4) {
    put(request, "squad.tonight.turnout", number(turnout));
    Node answer = planned(request);
    EXPECT_EQ(at(answer, "turnout").integer, turnout);
    EXPECT_GE(levels(answer), before) << turnout << " players";
    before = levels(answer);
  }
  EXPECT_GT(before, (std::array<std::int64_t, 4>{0, 0, 0, 0})) << "30 players do not fit as 6 do";
}

TEST(AnotherEvening, EveryDepartureSaysWhy) {
  Node request = demo_request("u13-kestrels.toml");
  for (const int minutes : {8, 12, 15}) {
    put(request, "squad.slot.minutes", number(minutes));
    Node answer = planned(request);
    EXPECT_FALSE(at(answer, "changes").items.empty());
    for (Node& change : at(answer, "changes").items) {
      EXPECT_NE(at(change, "why").text, "");
      EXPECT_FALSE(at(change, "from").text.empty() && at(change, "to").text.empty());
    }
    EXPECT_FALSE(at(answer, "minute_prices").items.empty()) << "a short slot has a price";
  }
}

TEST(AnotherEvening, ASoreKneeChangesOnlyTheSlip) {
  const Node request = demo_request("u13-kestrels.toml");
  Node sore = request;
  restrict_player(sore, "Q07", "knee");
  EXPECT_EQ(answered(sore), answered(request));
  Node before = answer_node(request, "slip");
  Node after = answer_node(sore, "slip");
  // One player more swaps; what stood before for the others stands still.
  std::vector<Node>& swaps = at(after, "swaps").items;
  ASSERT_EQ(swaps.size(), at(before, "swaps").items.size() + 1);
  const auto his =
      std::find_if(swaps.begin(), swaps.end(), [](const Node& row) { return row.find("player")->text == "Q07"; });
  ASSERT_NE(his, swaps.end());
  EXPECT_EQ(his->find("takes_part")->text, "joins in with swaps");
  swaps.erase(his);
  for (const Node& group : at(after, "groups").items) {
    const std::vector<Node>& ids = group.find("players")->items;
    const bool in_it = std::any_of(ids.begin(), ids.end(), [](const Node& id) { return id.text == "Q07"; });
    EXPECT_TRUE(!in_it || group.find("non_contact")->boolean) << "nobody holds or pushes who is sore";
  }
  // Who stands with whom without contact, and drills in pairs that he swaps out of, are the one other thing.
  for (const char* key : {"regrouped", "groups", "permitted", "notes"}) {
    erase(before, key);
    erase(after, key);
  }
  EXPECT_EQ(to_json(after), to_json(before));
}

TEST(AnotherEvening, WhoSitsOutIsOneFewer) {
  Node request = demo_request("u13-kestrels.toml");
  Node answer = planned(request);
  restrict_player(request, "Q07", "knee");
  at(request, "restrictions.restriction").items.back().set("sits_out", yes());
  Node after = planned(request);
  EXPECT_EQ(at(after, "turnout").integer, at(answer, "turnout").integer - 1);
  EXPECT_EQ(drills_of(after), drills_of(answer));
}

TEST(AnotherEvening, AWallAwayBarsOnlyWhatNeedsIt) {
  for (const char* routine : {"hall", "long-practice"}) {
    Node request = demo_request("u13-kestrels.toml", routine);
    put(request, "squad.slot.minutes", number(40));
    put(request, "squad.slot.days_to_match", number(9));
    put(request, "strip.wall", yes());
    Node with = planned(request);
    put(request, "strip.wall", Node::make_boolean(false));
    Node without = planned(request);
    const std::vector<std::string> stay = drills_of(without);
    for (const std::string& drill : drills_of(with)) {
      const bool stays = std::find(stay.begin(), stay.end(), drill) != stay.end();
      EXPECT_EQ(stays, !needs_wall(request, drill)) << routine << ": " << drill;
    }
  }
}

TEST(AnotherEvening, ABanTakesThatDrillAndAPinKeepsIt) {
  Node request = demo_request("u13-kestrels.toml");
  put(request, "squad.tonight.bans", texts({"squat"}));
  std::vector<std::string> drills = drills_of(planned(request));
  EXPECT_EQ(std::count(drills.begin(), drills.end(), "squat"), 0);
  request = demo_request("u13-kestrels.toml");
  put(request, "squad.slot.minutes", number(6));
  drills = drills_of(planned(request));
  ASSERT_EQ(std::count(drills.begin(), drills.end(), "strides"), 0) << "else the pin shows nothing";
  Node pin = Node::make_table();
  pin.set("drill", text("strides"));
  put(request, "squad.tonight.pins", Node::make_array());
  at(request, "squad.tonight.pins").items.push_back(pin);
  drills = drills_of(planned(request));
  EXPECT_EQ(std::count(drills.begin(), drills.end(), "strides"), 1);
}

// What only the clock or the kit of nobody's need says changes nothing at all.
TEST(AnotherEvening, WhatNothingReadsChangesNothing) {
  Node request = demo_request("u13-kestrels.toml");
  const std::string before = answered(request);
  put(request, "squad.kit.mats", number(40));
  put(request, "squad.partners.measure", text("age"));
  put(request, "squad.taught.wall-sit", number(30));
  at(request, "roster.0").set("shirt", text("99"));
  EXPECT_EQ(answered(request), before);
}

}  // namespace
}  // namespace lanework::door::test
