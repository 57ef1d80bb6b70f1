// A catalogue that is held: the same bytes as with the catalogue in the request, whatever was asked before.
#include "core/door/hold.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include "tests/door/demo.h"

namespace lanework::door::test {
namespace {

std::string hold_of(Node& request, const char* name) {
  Node hold = Node::make_table();
  hold.set("request", text("hold"));
  hold.set("name", text(name));
  hold.set("catalogue", at(request, "catalogue"));
  return to_json(hold);
}

Node with_held(Node request, const char* name) {
  erase(request, "catalogue");
  put(request, "held", text(name));
  return request;
}

std::string said(const std::string& answer, const char* key) {
  Node root = parse_json("answer", answer).value().root;
  return at(root, key).text;
}

TEST(Hold, AnyEveningIsTheSameBytes) {
  Held held;
  Node first = demo_request(kSquads[0]);
  ASSERT_EQ(run(hold_of(first, "club"), held), R"({"answer":"held","version":1,"name":"club"})");
  EXPECT_TRUE(rc::check("with the catalogue held or sent", [&] {
    Node request = demo_request(*rc::gen::elementOf(std::vector<const char*>(kSquads.begin(), kSquads.end())));
    put(request, "squad.slot.minutes", number(*rc::gen::inRange(5, 31)));
    put(request, "squad.tonight.turnout", number(*rc::gen::inRange(4, 23)));
    put(request, "squad.tonight.late", number(0));
    put(request, "request", text(*rc::gen::arbitrary<bool>() ? "plan" : "slip"));
    put(request, "spread", text(*rc::gen::arbitrary<bool>() ? "formula" : "simulated"));
    RC_ASSERT(run(to_json(with_held(request, "club")), held) == run(to_json(request)));
  }));
}

TEST(Hold, WithoutItOrUnderAnotherNameThereIsNone) {
  Node request = demo_request(kSquads[1]);
  const std::string asked = to_json(with_held(request, "club"));
  EXPECT_EQ(said(run(asked), "faults.0.sentence"), "request: held: found 'club', expected a request 'hold' before it");
  Held held;
  run(hold_of(request, "other"), held);
  EXPECT_EQ(said(run(asked, held), "faults.0.sentence"), "request: held: found 'club', expected 'other'");
}

TEST(Hold, AFaultLeavesWhatWasHeld) {
  Node request = demo_request(kSquads[1]);
  Held held;
  run(hold_of(request, "club"), held);
  const std::string asked = to_json(with_held(request, "club"));
  const std::string before = run(asked, held);
  Node broken = request;
  put(broken, "catalogue.drills", number(3));
  EXPECT_EQ(said(run(hold_of(broken, "club"), held), "answer"), "faults");
  erase(broken, "catalogue");
  EXPECT_EQ(said(run(R"({"request":"hold","name":"club"})", held), "answer"), "faults");
  EXPECT_EQ(run(asked, held), before);
}

TEST(Hold, OneOfCatalogueAndHeld) {
  Node request = demo_request(kSquads[1]);
  put(request, "held", text("club"));
  EXPECT_EQ(said(run(to_json(request)), "faults.0.sentence"),
            "request: held: found catalogue and held, expected one of them");
}

TEST(Spread, ByFormulaTheSessionIsTheSameAndTheFinishIsNear) {
  for (const char* squad : kSquads) {
    Node request = demo_request(squad);
    Node simulated = answer_node(request);
    put(request, "spread", text("formula"));
    Node formula = answer_node(request);
    EXPECT_EQ(to_json(at(formula, "items")), to_json(at(simulated, "items")));
    EXPECT_EQ(at(formula, "time.spread").text, "formula");
    EXPECT_EQ(at(simulated, "time").find("spread"), nullptr);
    for (const char* key : {"time.simulated_median_seconds", "time.nine_in_ten_seconds"}) {
      EXPECT_NEAR(static_cast<double>(at(formula, key).integer), static_cast<double>(at(simulated, key).integer), 30)
          << squad << ' ' << key;
    }
  }
}

}  // namespace
}  // namespace lanework::door::test
