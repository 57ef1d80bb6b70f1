// What the door says to requests that cannot be understood: always an answer, every fault one line.
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include "tests/door/demo.h"

namespace lanework::door::test {
namespace {

std::string sentences(const std::string& answer) {
  Node root = parse_json("answer", answer).value().root;
  if (at(root, "answer").text != "faults") return "";
  std::string out;
  for (Node& fault : at(root, "faults").items) out += at(fault, "sentence").text + "\n";
  return out;
}

TEST(DoorFaults, WhatIsNoRequestIsTold) {
  EXPECT_EQ(sentences(run("")), "request:1:1: found a syntax error, expected a JSON object\n");
  EXPECT_EQ(sentences(run("[]")), "request: found something other than an object, expected a JSON object\n");
  EXPECT_EQ(sentences(run("{}")), "request: request: found nothing, expected text\n");
  EXPECT_EQ(sentences(run("{\"request\": 7}")), "request: request: found 7, expected text\n");
  EXPECT_EQ(sentences(run("{\"request\": \"card\"}")),
            "request: request: found 'card', expected one of plan, slip, figure, hold, check-drill\n");
  EXPECT_EQ(sentences(run("{\"request\": \"plan\",\n \"squad\": }")).find("request:2:"), 0U);
  EXPECT_NE(sentences(run("{\"request\": \"plan\", \"request\": \"plan\"}")).find("the key 'request' twice"),
            std::string::npos);
  EXPECT_NE(sentences(run(std::string(100000, '['))), "");
  EXPECT_NE(sentences(run(std::string(100, '\0'))), "");
  EXPECT_NE(sentences(run("{\"request\": \"\xff\xfe\"}")), "");
}

TEST(DoorFaults, EveryMissingPartIsNamed) {
  for (const char* part : {"catalogue", "routine", "strip", "squad"}) {
    Node request = demo_request("u13-kestrels.toml");
    erase(request, part);
    EXPECT_NE(sentences(run(to_json(request))).find(std::string("request: ") + part + ": found nothing"),
              std::string::npos)
        << part << "\n"
        << sentences(run(to_json(request)));
    put(request, part, number(3));
    EXPECT_NE(sentences(run(to_json(request))).find(std::string("request: ") + part + ": found 3, expected a table"),
              std::string::npos)
        << part;
  }
  Node request = demo_request("u13-kestrels.toml");
  erase(request, "catalogue.drills");
  EXPECT_EQ(sentences(run(to_json(request))), "request: catalogue.drills: found nothing, expected a list of drills\n");
}

TEST(DoorFaults, RestrictionsMayBeAbsentAndARosterNotWithoutTurnoutAndAge) {
  Node request = demo_request("u13-kestrels.toml");
  erase(request, "restrictions");
  EXPECT_EQ(sentences(run(to_json(request))), "");
  erase(request, "roster");
  put(request, "squad.tonight.away", texts({}));
  put(request, "squad.partners.forbidden", texts({}));
  EXPECT_NE(sentences(run(to_json(request))).find("0 players tonight"), std::string::npos);
  put(request, "squad.tonight.turnout", number(14));
  EXPECT_NE(sentences(run(to_json(request))).find("age: found no age"), std::string::npos);
  put(request, "squad.age", number(12));
  EXPECT_EQ(sentences(run(to_json(request))), "");
}

TEST(DoorFaults, UnknownPartsAreFaults) {
  Node request = demo_request("u13-kestrels.toml");
  put(request, "weather", text("rain"));
  EXPECT_EQ(sentences(run(to_json(request))),
            "request: weather: found 'weather', expected request, catalogue, held, routine, strip, squad, "
            "restrictions, permissions, roster or spread\n");
}

TEST(DoorFaults, FaultsOfAllPartsComeAtOnce) {
  Node request = demo_request("u13-kestrels.toml");
  put(request, "strip.lanes", number(0));
  put(request, "squad.slot.minutes", number(-3));
  put(request, "routine.drill.0.id", text("moon-walk"));
  const std::string told = sentences(run(to_json(request)));
  EXPECT_NE(told.find("lanes: found 0"), std::string::npos) << told;
  EXPECT_NE(told.find("slot.minutes: found -3"), std::string::npos) << told;
  EXPECT_NE(told.find("'moon-walk'"), std::string::npos) << told;
  EXPECT_EQ(std::count(told.begin(), told.end(), '\n'), 3) << told;
}

TEST(DoorFaults, AnInstructionThatSaysWhatIsTheMatterIsRefused) {
  Node request = demo_request("u13-kestrels.toml");
  restrict_player(request, "Q07", "knee");
  at(request, "restrictions.restriction").items.back().set("instruction", text("torn ligament, no jumping"));
  EXPECT_NE(sentences(run(to_json(request))).find("restrictions: restriction.3.instruction: found 'torn'"),
            std::string::npos)
      << sentences(run(to_json(request)));
}

// All places in a tree, lists counted from 0.
void collect(const Node& node, const std::string& path, std::vector<std::string>& out) {
  if (!path.empty()) out.push_back(path);
  const std::string prefix = path.empty() ? "" : path + ".";
  for (const auto& [key, child] : node.entries) {
    if (key.find('.') == std::string::npos) collect(child, prefix + key, out);
  }
  for (std::size_t i = 0; i < node.items.size(); ++i) collect(node.items[i], prefix + std::to_string(i), out);
}

Node any_value() {
  switch (*rc::gen::inRange(0, 7)) {
    case 0:
      return Node::make_boolean(*rc::gen::arbitrary<bool>());
    case 1:
      return number(*rc::gen::arbitrary<std::int64_t>());
    case 2:
      return number(*rc::gen::inRange(-3, 100));
    case 3:
      return check::test::real(*rc::gen::element(0.5, -1e300, 1e300, 3.25));
    case 4:
      return text(*rc::gen::element<std::string>("", "knee", "2026-11-26", "=1+1", "<b>", "\n", "Q01", "plan"));
    case 5:
      return Node::make_table();
    default:
      return texts({"squat", "squat"});
  }
}

void disturb(Node& request) {
  // Half of the disturbances outside the catalogue, which is most of a request.
  std::vector<std::string> paths;
  if (*rc::gen::arbitrary<bool>()) {
    collect(request, "", paths);
  } else {
    for (const char* part : {"squad", "strip", "restrictions", "routine", "roster"}) {
      if (request.find(part) != nullptr) collect(*request.find(part), part, paths);
    }
  }
  if (paths.empty()) return;
  const std::string path = paths.at(*rc::gen::inRange<std::size_t>(0, paths.size()));
  if (*rc::gen::inRange(0, 4) == 0) {
    erase(request, path);
  } else {
    put(request, path, any_value());
  }
}

// Whatever stands anywhere in a request: an answer of a known kind comes back, the same twice, and every fault is
// one line that says what was found.
TEST(DoorFaults, AnythingAnywhereIsAnswered) {
  const std::vector<Node> requests = {demo_request(kSquads[0]), demo_request(kSquads[1]), demo_request(kSquads[2])};
  int faults = 0;
  int plans = 0;
  EXPECT_TRUE(rc::check([&] {
    Node request = requests.at(*rc::gen::inRange<std::size_t>(0, requests.size()));
    for (int i = *rc::gen::inRange(1, 3); i > 0; --i) disturb(request);
    const std::string sent = to_json(request);
    const std::string answer = run(sent);
    RC_ASSERT(run(sent) == answer);
    Node root = parse_json("answer", answer).value().root;
    const std::string kind = at(root, "answer").text;
    if (kind == "plan" || kind == "slip") {
      ++plans;
      return;
    }
    RC_ASSERT(kind == "faults");
    ++faults;
    RC_ASSERT(!at(root, "faults").items.empty());
    for (Node& fault : at(root, "faults").items) {
      const std::string& sentence = at(fault, "sentence").text;
      RC_ASSERT(!sentence.empty());
      RC_ASSERT(sentence.find('\n') == std::string::npos);
      RC_ASSERT(!at(fault, "found").text.empty());
      RC_ASSERT(!at(fault, "expected").text.empty());
      RC_ASSERT(!at(fault, "file").text.empty());
    }
  }));
  EXPECT_GT(faults, 0);
  EXPECT_GT(plans, 0);
}

// Bytes of any kind, and a sound request cut anywhere.
TEST(DoorFaults, AnyBytesAreAnswered) {
  const std::string sound = to_json(demo_request("u10-wrens.toml"));
  EXPECT_TRUE(rc::check([&](const std::string& bytes) {
    RC_ASSERT(sentences(run(bytes)) != "");
    const auto kept = *rc::gen::inRange<std::size_t>(0, sound.size());
    RC_ASSERT(sentences(run(sound.substr(0, kept))) != "");
  }));
}

}  // namespace
}  // namespace lanework::door::test
