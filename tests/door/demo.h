// The demo squads' requests for the tests of the door: made from their files, changed in one thing, answered.
#pragma once

#include <array>
#include <set>
#include <string>
#include <vector>

#include "core/door/door.h"
#include "tests/check/requests.h"

namespace lanework::door::test {

using check::test::at;
using check::test::demo_request;
using check::test::erase;
using check::test::number;
using check::test::planned;
using check::test::put;
using check::test::text;
using check::test::texts;
using check::test::yes;

inline constexpr std::array<const char*, 3> kSquads = {"u10-wrens.toml", "u13-kestrels.toml", "u16-merlins.toml"};

inline std::string answered(Node request, const char* name = "plan") {
  put(request, "request", text(name));
  return run(to_json(request));
}

inline Node answer_node(const Node& request, const char* name = "plan") {
  return parse_json("answer", answered(request, name)).value().root;
}

inline std::vector<std::string> drills_of(Node answer) {
  std::vector<std::string> out;
  for (Node& item : at(answer, "items").items) out.push_back(at(item, "drill").text);
  return out;
}

inline std::set<std::string> left_out(Node answer) {
  std::set<std::string> out;
  for (Node& change : at(answer, "changes").items) {
    if (at(change, "kind").text == "left-out") out.insert(at(change, "drill").text);
  }
  return out;
}

inline std::array<std::int64_t, 4> levels(Node answer) {
  const auto level = [&](const char* name) { return at(answer, std::string("objective.") + name).integer; };
  return {level("uncovered"), level("shortfall"), level("changes"), level("preference")};
}

// Adds what one player must avoid tonight.
inline void restrict_player(Node& request, const std::string& player, const std::string& area) {
  if (at(request, "restrictions").find("restriction") == nullptr)
    put(request, "restrictions.restriction", Node::make_array());
  Node row = Node::make_table();
  row.set("player", text(player));
  row.set("areas", texts({area}));
  row.set("instruction", text("sore tonight"));
  at(request, "restrictions.restriction").items.push_back(row);
}

}  // namespace lanework::door::test
