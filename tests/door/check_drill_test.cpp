// One drill in a form: the same faults in the same words as when the whole catalogue is read with it.
#include "core/door/check_drill.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include "core/catalogue/read_catalogue.h"
#include "core/door/evening_request.h"
#include "tests/door/demo.h"

namespace lanework::door::test {
namespace {

const Node& demo_catalogue() {
  static const Node kCatalogue = *demo_request(kSquads[1]).find("catalogue");
  return kCatalogue;
}

Node drill_called(const std::string& id) {
  for (const Node& drill : demo_catalogue().find("drills")->items) {
    if (drill.find("id")->text == id) return drill;
  }
  return Node::make_table();
}

Node check_request(const Node& drill, const std::string& instead_of) {
  Node request = Node::make_table();
  request.set("request", text("check-drill"));
  request.set("drill", drill);
  if (!instead_of.empty()) request.set("instead_of", text(instead_of));
  request.set("catalogue", demo_catalogue());
  return request;
}

std::vector<std::string> sentences(Node answer) {
  std::vector<std::string> out;
  for (Node& fault : at(answer, "faults").items) out.push_back(at(fault, "sentence").text);
  return out;
}

std::vector<std::string> said_of(const Node& request) {
  Node answer = parse_json("answer", run(to_json(request))).value().root;
  EXPECT_EQ(at(answer, "answer").text, "check-drill") << to_json(answer).substr(0, 300);
  return sentences(std::move(answer));
}

// The whole catalogue with the drill last, as a folder has a file that was added or changed.
std::vector<std::string> said_of_all(const Node& drill, const std::string& instead_of) {
  Node request = Node::make_table();
  Node catalogue = demo_catalogue();
  std::vector<Node>& drills = at(catalogue, "drills").items;
  std::erase_if(drills, [&](const Node& one) { return one.find("id")->text == instead_of; });
  drills.push_back(drill);
  request.set("catalogue", catalogue);
  const Node sent = parse_json("request", to_json(request)).value().root;
  const auto read = catalogue::read_catalogue(catalogue_documents_of(sent).value());
  return read ? std::vector<std::string>{} : sentences(faults_node(read.faults()));
}

struct Change {
  const char* path;
  Node value;
};

std::vector<Change> changes() {
  return {{"name", text("")},
          {"id", text("Not an id")},
          {"id", text("squat")},
          {"family", text("hamstrings")},
          {"family", text("trunk")},
          {"phase", text("run")},
          {"ages.to", number(4)},
          {"ages.from", text("eight")},
          {"cues", texts({"one two three four five six seven eight nine"})},
          {"rung.1.key", text("bodyweight")},
          {"dose.steps.0.sets", number(0)},
          {"sources.dose", texts({"nobody-2031"})},
          {"stress.0.area", text("tail")},
          {"figure.pose.0.angles.knee", number(999)},
          {"figure.main", text("nowhere")},
          {"loads", Node::make_table()},
          {"surprise", yes()}};
}

TEST(CheckDrill, EveryShippedDrillIsSoundInItsOwnPlace) {
  for (const Node& drill : demo_catalogue().find("drills")->items) {
    EXPECT_TRUE(said_of(check_request(drill, drill.find("id")->text)).empty()) << drill.find("id")->text;
  }
}

TEST(CheckDrill, FaultsAreThoseOfTheWholeCatalogueReadWithIt) {
  EXPECT_TRUE(rc::check("whatever is changed in whichever drill", [] {
    const std::vector<Node>& drills = demo_catalogue().find("drills")->items;
    Node drill = *rc::gen::elementOf(drills);
    const std::string id = drill.find("id")->text;
    const std::vector<Change> all = changes();
    for (int times = *rc::gen::inRange(1, 4); times > 0; --times) {
      const Change& change = all[static_cast<std::size_t>(*rc::gen::inRange(0, static_cast<int>(all.size())))];
      put(drill, change.path, change.value);
    }
    const std::string instead_of = *rc::gen::arbitrary<bool>() ? id : "";
    RC_ASSERT(said_of(check_request(drill, instead_of)) == said_of_all(drill, instead_of));
  }));
}

TEST(CheckDrill, AnIdThatAnotherHasIsTold) {
  Node drill = drill_called("side-plank");
  EXPECT_EQ(said_of(check_request(drill, "")).size(), 1U);
  put(drill, "id", text("squat"));
  const std::vector<std::string> said = said_of(check_request(drill, "side-plank"));
  ASSERT_EQ(said.size(), 1U);
  EXPECT_NE(said[0].find("an id of its own; 'squat.toml' has it too"), std::string::npos) << said[0];
}

TEST(CheckDrill, WithACatalogueHeldItIsTheSameBytes) {
  Held held;
  Node hold = Node::make_table();
  hold.set("request", text("hold"));
  hold.set("name", text("club"));
  hold.set("catalogue", demo_catalogue());
  run(to_json(hold), held);
  Node drill = drill_called("squat");
  for (const Change& change : changes()) {
    put(drill, change.path, change.value);
    const Node request = check_request(drill, "squat");
    Node short_one = request;
    erase(short_one, "catalogue");
    put(short_one, "held", text("club"));
    EXPECT_EQ(run(to_json(short_one), held), run(to_json(request))) << change.path;
  }
}

TEST(CheckDrill, WhatIsWrongWithTheQuestionIsNotBlamedOnTheDrill) {
  const auto said = [](const Node& request) {
    Node answer = parse_json("answer", run(to_json(request))).value().root;
    EXPECT_EQ(at(answer, "answer").text, "faults");
    return sentences(std::move(answer));
  };
  Node request = check_request(drill_called("squat"), "squat");
  put(request, "drill", text("squat"));
  EXPECT_EQ(said(request), std::vector<std::string>{"request: drill: found 'squat', expected a table"});
  request = check_request(drill_called("squat"), "squat");
  put(request, "instead_of", number(3));
  put(request, "routines", Node::make_array());
  EXPECT_EQ(said(request).size(), 2U);
  erase(request, "routines");
  erase(request, "instead_of");
  erase(request, "catalogue");
  EXPECT_FALSE(said(request).empty());
}

}  // namespace
}  // namespace lanework::door::test
