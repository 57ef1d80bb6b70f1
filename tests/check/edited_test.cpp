// Plans edited by hand: house routines as they are, permuted, and with mistakes.
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <fstream>
#include <iterator>
#include <stdexcept>

#include "tests/check/requests.h"
#include "tests/check/tiny.h"

namespace lanework::check {
namespace {

using namespace test;

std::string routine_text(const std::string& id) {
  std::ifstream in(std::string(LANEWORK_SOURCE_DIR) + "/catalogue/routines/" + id + ".toml", std::ios::binary);
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

Document document(const std::string& toml) {
  auto read = parse_toml("edited.toml", toml);
  if (!read) throw std::runtime_error(to_line(read.faults().front()));
  return read.value();
}

Report edited(const Node& request, const Document& plan) {
  auto report = check_edited(request, plan);
  if (!report) throw std::runtime_error(to_line(report.faults().front()));
  return report.value();
}

std::vector<Node>& drills_of(Document& plan) { return at(plan.root, "drill").items; }

// The demo squad on an evening on which its routine can be done as written.
Node roomy(const std::string& squad, const std::string& routine) {
  Node request = demo_request(squad, routine);
  put(request, "squad.slot.minutes", number(45));
  put(request, "squad.slot.days_to_match", number(5));
  return request;
}

TEST(Edited, AHouseRoutineIsSoundAndChangesNothing) {
  for (const auto& [squad, routine] : {std::pair{"u10-wrens.toml", "first-steps"},
                                       {"u13-kestrels.toml", "early-teens"},
                                       {"u16-merlins.toml", "mid-teens"}}) {
    const Report report = edited(roomy(squad, routine), document(routine_text(routine)));
    EXPECT_TRUE(report.ok()) << routine << "\n" << lines(report);
    EXPECT_EQ(report.levels.uncovered + report.levels.shortfall + report.levels.changes, 0) << routine;
    EXPECT_TRUE(report.changes.empty());
    EXPECT_GT(report.planned_seconds, 600);
  }
}

TEST(Edited, APermutedRoutineIsOutOfOrder) {
  const Node request = roomy("u13-kestrels.toml", "early-teens");
  const Document routine = document(routine_text("early-teens"));
  const bool passed = rc::check("any other order is told", [&] {
    Document plan = routine;
    std::vector<Node>& drills = drills_of(plan);
    // Shuffled by hand, so that every order can come up.
    for (std::size_t i = drills.size() - 1; i > 0; --i) {
      std::swap(drills[i], drills[*rc::gen::inRange<std::size_t>(0, i + 1)]);
    }
    const std::vector<Node>& before = routine.root.find("drill")->items;
    const bool same = std::equal(drills.begin(), drills.end(), before.begin(),
                                 [](const Node& a, const Node& b) { return a.find("id")->text == b.find("id")->text; });
    RC_PRE(!same);
    const Report report = edited(request, plan);
    RC_ASSERT(breaks(report, "order"));
    // The same drills and doses: nothing is short and nothing has changed.
    RC_ASSERT(report.levels.shortfall == 0);
    RC_ASSERT(report.changes.empty());
  });
  EXPECT_TRUE(passed);
}

TEST(Edited, TheTimesOfAnAnswerComeOutAgain) {
  const Node request = demo_request("u13-kestrels.toml");
  Node answer = planned(request);
  std::string toml;
  for (const Node& item : at(answer, "items").items) {
    toml += "[[drill]]\nid = \"" + item.find("drill")->text + "\"\nrung = \"" + item.find("rung")->text +
            "\"\nsets = " + std::to_string(item.find("sets")->integer) +
            "\namount = " + std::to_string(item.find("amount")->integer) + "\n";
  }
  const Report report = edited(request, document(toml));
  EXPECT_TRUE(report.ok()) << lines(report);
  EXPECT_EQ(report.planned_seconds, at(answer, "planned_seconds").integer);
  EXPECT_EQ(report.levels.changes, at(answer, "objective.changes").integer);
  ASSERT_EQ(report.items.size(), at(answer, "items").items.size());
  for (std::size_t i = 0; i < report.items.size(); ++i) {
    EXPECT_EQ(report.items[i].takes_seconds, at(answer, "items." + std::to_string(i) + ".takes_seconds").integer);
  }
}

TEST(Edited, EveryMistakeIsToldAtOnce) {
  const Report report =
      edited(tiny_request(), document("[[drill]]\nid = \"jump-and-stick\"\nrung = \"forward\"\n"
                                      "sets = 1\namount = 8\n"
                                      "[[drill]]\nid = \"side-plank\"\nrung = \"straight-legs\"\n"
                                      "sets = 2\namount = 20\n"
                                      "[[drill]]\nid = \"headstand\"\nrung = \"x\"\nsets = 1\namount = 1\n"));
  for (const char* rule : {"drill-unknown", "order", "age", "ceiling-contacts"}) {
    EXPECT_TRUE(breaks(report, rule)) << rule << "\n" << lines(report);
  }
  EXPECT_FALSE(breaks(report, "slot")) << lines(report);
  EXPECT_EQ(report.items.size(), 2U);
}

TEST(Edited, WhatTheLeadChoosesIsAChangeNotAMistake) {
  const Report report = edited(tiny_request(), document("[[drill]]\nid = \"easy-laps\"\nrung = \"steady\"\n"
                                                        "sets = 1\namount = 3\n"
                                                        "[[drill]]\nid = \"side-plank\"\nrung = \"knees-down\"\n"
                                                        "sets = 1\namount = 15\n"));
  EXPECT_TRUE(report.ok()) << lines(report);
  ASSERT_EQ(report.changes.size(), 4U);
  EXPECT_EQ(report.changes[0].kind, "harder-rung");
  EXPECT_EQ(report.changes[1].kind, "larger-dose");
  EXPECT_EQ(report.changes[1].to, "3 passes");
  EXPECT_EQ(report.changes[2].kind, "smaller-dose");
  EXPECT_EQ(report.changes[3].kind, "left-out");
  EXPECT_EQ(report.levels.changes, 8 + 4 + 8 + 8);  // a rung, a dose, two doses, one left out
}

TEST(Edited, AFileThatCannotBeReadGivesFaults) {
  const Node request = tiny_request();
  EXPECT_FALSE(check_edited(request, document("")).ok());
  EXPECT_FALSE(check_edited(request, document("[[drill]]\nid = \"squat\"\n")).ok());
  EXPECT_FALSE(check_edited(request, document("[[drill]]\nid = \"easy-laps\"\nrung = \"easy\"\nsets = 1\namount = 1\n"
                                              "seconds = 4\n"))
                   .ok());
}

TEST(Edited, EitherKindOfFile) {
  const Node request = tiny_request();
  const auto saved = check_plan(request, {"saved.json", tiny_answer()});
  ASSERT_TRUE(saved.ok());
  EXPECT_TRUE(saved.value().ok());
  const auto by_hand =
      check_plan(request, document("[[drill]]\nid = \"easy-laps\"\nrung = \"easy\"\nsets = 1\namount = 2\n"));
  ASSERT_TRUE(by_hand.ok());
  EXPECT_EQ(by_hand.value().planned_seconds, 64);
  const Node node = to_node(by_hand.value());
  EXPECT_EQ(node.find("planned_seconds")->integer, 64);
  EXPECT_TRUE(node.find("ok")->boolean);
}

}  // namespace
}  // namespace lanework::check
