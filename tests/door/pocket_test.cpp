#include "core/door/pocket.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>

#include "core/catalogue/words.h"
#include "tests/door/demo.h"

namespace lanework::door::test {
namespace {

Node pocket_request(const Node& request) {
  auto documents = documents_of(request).value();
  return request_of("plan", pocket_documents(std::move(documents)).value());
}

// Without what depends on the scale of the partners' measure, or on who is alike.
std::string without_partners(const Node& slip) {
  Node out = Node::make_table();
  for (const auto& [key, value] : slip.entries) {
    if (key != "groups" && key != "alone" && key != "regrouped" && key != "permitted" && key != "notes")
      out.set(key, value);
  }
  return to_json(out);
}

void restrict_somebody(Node& request) {
  const Node& roster = at(request, "roster");
  const auto somebody = *rc::gen::inRange<std::size_t>(0, roster.items.size());
  const auto& areas = catalogue::body_area_words();
  const auto area = *rc::gen::inRange<std::size_t>(0, areas.size());
  restrict_player(request, roster.items[somebody].find("id")->text, std::string(areas[area]));
}

TEST(Pocket, GivesTheSamePlanByteForByteAndTheSameSwaps) {
  for (const char* squad : kSquads) {
    const Node demo = demo_request(squad);
    EXPECT_TRUE(rc::check([&] {
      Node request = demo;
      const int more = *rc::gen::inRange(0, 4);
      for (int i = 0; i < more; ++i) restrict_somebody(request);
      put(request, "squad.slot.minutes", number(*rc::gen::inRange(8, 26)));
      const Node pocket = pocket_request(request);
      RC_ASSERT(answered(pocket) == answered(request));
      RC_ASSERT(without_partners(answer_node(pocket, "slip")) == without_partners(answer_node(request, "slip")));
    })) << squad;
  }
}

TEST(Pocket, HoldsNobodyElseAndNothingMeasured) {
  for (const char* squad : kSquads) {
    Node request = demo_request(squad);
    restrict_player(request, at(request, "roster.0.id").text, "knee");
    Node pocket = pocket_request(request);
    erase(pocket, "catalogue");
    erase(pocket, "routine");
    const std::string text = to_json(pocket);
    for (const char* barred :
         {"birth", "size_group", "body_mass", "forbidden", "size-group", "areas", "kinds", "allowed"}) {
      EXPECT_EQ(text.find(barred), std::string::npos) << squad << ": " << barred;
    }
    EXPECT_LE(at(pocket, "roster").items.size(), at(request, "roster").items.size());
  }
}

TEST(Pocket, BothFormsAtOnceAreAFault) {
  Node request = demo_request(kSquads[1]);
  put(request, "permissions", Node::make_table());
  put(request, "request", text("plan"));
  EXPECT_NE(run(to_json(request)).find("restrictions and permissions"), std::string::npos);
}

}  // namespace
}  // namespace lanework::door::test
