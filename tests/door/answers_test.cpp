// The door on the demo squads: the same bytes twice, from files as from JSON, and what an answer holds together.
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>

#include "app/read/evening_files.h"
#include "core/door/plan_answer.h"
#include "core/door/slip_answer.h"
#include "tests/door/demo.h"

namespace lanework::door::test {
namespace {

class EverySquad : public testing::TestWithParam<const char*> {};

INSTANTIATE_TEST_SUITE_P(Demo, EverySquad, testing::ValuesIn(kSquads),
                         [](const auto& one) { return std::string(one.param).substr(0, 3); });

TEST_P(EverySquad, TheUsualEveningIsPlannedAndStaysInItsSlot) {
  Node answer = planned(demo_request(GetParam()));
  EXPECT_EQ(at(answer, "answer").text, "plan");
  EXPECT_EQ(at(answer, "version").integer, 1);
  EXPECT_EQ(at(answer, "outcome").text, "optimal");
  EXPECT_EQ(answer.find("infeasible"), nullptr);
  EXPECT_LE(at(answer, "planned_seconds").integer + at(answer, "margin_seconds").integer,
            at(answer, "slot_seconds").integer);
  EXPECT_LE(at(answer, "time.nine_in_ten_seconds").integer, at(answer, "slot_seconds").integer);
  // Gathering is the walk to the first drill.
  EXPECT_EQ(at(answer, "items.0.change_seconds").integer, at(answer, "gathering_seconds").integer);
  std::int64_t clock = 0;
  for (Node& item : at(answer, "items").items) {
    clock += at(item, "change_seconds").integer;
    EXPECT_EQ(at(item, "starts_seconds").integer, clock) << at(item, "drill").text;
    clock += at(item, "takes_seconds").integer;
  }
  EXPECT_EQ(at(answer, "planned_seconds").integer, clock);
  for (Node& load : at(answer, "loads").items) {
    EXPECT_LE(at(load, "planned").integer, at(load, "ceiling").integer) << at(load, "load").text;
  }
}

TEST_P(EverySquad, TheSameRequestGivesTheSameBytes) {
  const Node request = demo_request(GetParam());
  EXPECT_EQ(answered(request), answered(request));
  EXPECT_EQ(answered(request, "slip"), answered(request, "slip"));
}

TEST_P(EverySquad, FilesAndRequestGiveTheSameBytes) {
  const std::filesystem::path root = LANEWORK_SOURCE_DIR;
  auto files =
      read::read_evening_files((root / "demo/quillmere/squads" / GetParam()).string(), (root / "catalogue").string());
  ASSERT_TRUE(files);
  const read::EveningFiles& f = files.value();
  const EveningDocuments documents = {f.catalogue, f.routine, f.strip, f.squad, f.restrictions, f.roster};
  const auto matter = read_evening(documents);
  ASSERT_TRUE(matter) << to_line(matter.faults().front());
  plan::KernelWorkspace workspace;
  const PlanAnswer answer = answer_plan(matter.value(), workspace);
  EXPECT_EQ(to_json(to_node(answer, matter.value())), run(to_json(request_of("plan", documents))));
  const auto slip = answer_slip(matter.value(), answer);
  ASSERT_TRUE(slip);
  EXPECT_EQ(to_json(to_node(slip.value(), matter.value(), answer)), run(to_json(request_of("slip", documents))));
  // Through JSON and back nothing is lost, however often.
  const Node request = request_of("plan", documents);
  const auto again = documents_of(parse_json("request", to_json(request)).value().root);
  ASSERT_TRUE(again);
  EXPECT_EQ(to_json(request_of("plan", again.value())), to_json(request));
}

TEST_P(EverySquad, IndentedRequestsAndOtherOrdersOfKeysGiveTheSameBytes) {
  Node request = demo_request(GetParam());
  const std::string plain = answered(request);
  put(request, "request", text("plan"));
  EXPECT_EQ(run(to_json(request, 3)), plain);
  std::reverse(request.entries.begin(), request.entries.end());
  Node& squad = at(request, "squad");
  std::reverse(squad.entries.begin(), squad.entries.end());
  EXPECT_EQ(run(to_json(request)), plain);
}

// A workspace that served other requests before gives what a new one gives.
TEST(Door, AUsedWorkspaceChangesNothing) {
  plan::KernelWorkspace used;
  for (int round = 0; round < 2; ++round) {
    for (const char* squad : kSquads) {
      const Node request = demo_request(squad);
      const auto matter = read_evening(documents_of(request).value());
      EXPECT_EQ(to_json(to_node(answer_plan(matter.value(), used), matter.value())), answered(request)) << squad;
    }
  }
}

TEST(Door, AHopelessEveningSaysWhyAndTheWayOutHolds) {
  Node request = demo_request("u13-kestrels.toml");
  put(request, "squad.slot.minutes", number(5));
  Node pins = Node::make_array();
  for (const char* drill :
       {"easy-laps", "side-plank", "squat", "strides", "plant-and-cut", "single-leg-bridge", "high-skip"}) {
    Node pin = Node::make_table();
    pin.set("drill", text(drill));
    pins.items.push_back(pin);
  }
  put(request, "squad.tonight.pins", pins);
  Node answer = planned(request);
  EXPECT_EQ(at(answer, "outcome").text, "infeasible");
  EXPECT_TRUE(at(answer, "items").items.empty());
  EXPECT_EQ(answer.find("objective"), nullptr);
  EXPECT_EQ(answer.find("time"), nullptr);
  EXPECT_FALSE(at(answer, "infeasible.conflict").items.empty());
  EXPECT_NE(at(answer, "infeasible.way_out").text, "");
}

TEST(Door, PinnedAndBannedIsInfeasibleAndSaysBoth) {
  Node request = demo_request("u13-kestrels.toml");
  Node pin = Node::make_table();
  pin.set("drill", text("squat"));
  put(request, "squad.tonight.pins", Node::make_array());
  at(request, "squad.tonight.pins").items.push_back(pin);
  put(request, "squad.tonight.bans", texts({"squat"}));
  Node answer = planned(request);
  EXPECT_EQ(at(answer, "outcome").text, "infeasible");
  EXPECT_NE(to_json(at(answer, "infeasible")).find("quat"), std::string::npos);
}

TEST(Door, TheSlipNamesEveryPlayerOnceAndNobodyKeptApartTogether) {
  Node request = demo_request("u13-kestrels.toml");
  Node answer = answer_node(request, "slip");
  EXPECT_EQ(at(answer, "answer").text, "slip");
  std::multiset<std::string> standing;
  for (Node& group : at(answer, "groups").items) {
    std::set<std::string> ids;
    for (const Node& id : at(group, "players").items) ids.insert(id.text);
    EXPECT_TRUE(ids.size() == 2U || ids.size() == 3U);
    EXPECT_FALSE(ids.count("Q06") == 1 && ids.count("Q10") == 1);
    standing.insert(ids.begin(), ids.end());
  }
  for (const Node& id : at(answer, "alone").items) standing.insert(id.text);
  // Q03 and Q16 are away, Q05 sits out; the other 15 of the 18 are there.
  EXPECT_EQ(standing.size(), 15U);
  for (const char* absent : {"Q03", "Q05", "Q16", "W01"}) EXPECT_EQ(standing.count(absent), 0U) << absent;
  for (const std::string& id : standing) EXPECT_EQ(standing.count(id), 1U) << id;
  EXPECT_EQ(at(answer, "restrictions_as_known").text, "Sunday 20:10");
}

TEST(Door, TheSlipSaysWhatARestrictedPlayerDoesInstead) {
  Node answer = answer_node(demo_request("u13-kestrels.toml"), "slip");
  Node& swaps = at(answer, "swaps");
  ASSERT_EQ(swaps.items.size(), 2U);
  EXPECT_EQ(at(swaps, "0.player").text, "Q14");
  EXPECT_EQ(at(swaps, "0.takes_part").text, "joins in with swaps");
  EXPECT_EQ(at(swaps, "0.instruction").text, "no jumping, no sharp turns until 3 Dec");
  std::set<std::string> swapped;
  for (Node& swap : at(swaps, "0.swaps").items) swapped.insert(at(swap, "instead_of").text);
  EXPECT_EQ(swapped.count("jump-and-stick"), 1U);
  EXPECT_EQ(swapped.count("plant-and-cut"), 1U);
  EXPECT_EQ(swapped.count("side-plank"), 0U);
  EXPECT_EQ(at(swaps, "1.player").text, "Q05");
  EXPECT_EQ(at(swaps, "1.takes_part").text, "sits out, see a clinician");
  EXPECT_TRUE(at(swaps, "1.swaps").items.empty());
}

}  // namespace
}  // namespace lanework::door::test
