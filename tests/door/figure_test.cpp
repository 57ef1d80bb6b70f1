#include "core/door/figure_answer.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdlib>

#include "tests/door/demo.h"

namespace lanework::door::test {
namespace {

Node figure_request(const Node& drill, const std::string& rung, std::int64_t frames) {
  Node request = Node::make_table();
  request.set("request", text("figure"));
  request.set("drill", drill);
  request.set("rung", text(rung));
  request.set("frames", number(frames));
  return request;
}

Node shown(const Node& drill, const std::string& rung, std::int64_t frames = 24) {
  return parse_json("answer", run(to_json(figure_request(drill, rung, frames)))).value().root;
}

// Every rung of every shipped drill moves: nothing leaves the picture, and from one picture to the next nothing jumps.
TEST(Figure, EveryRungOfEveryDrillStaysInItsPictureAndMovesSmoothly) {
  const Node request = demo_request(kSquads[1]);
  int moving = 0;
  for (const Node& drill : request.find("catalogue")->find("drills")->items) {
    for (const Node& rung : drill.find("rung")->items) {
      const std::string key = rung.find("key")->text;
      const std::string where = drill.find("id")->text + " " + key;
      Node answer = shown(drill, key, 60);
      ASSERT_EQ(at(answer, "answer").text, "figure") << where << to_json(answer).substr(0, 400);
      const std::int64_t width = at(answer, "width").integer;
      const std::int64_t height = at(answer, "height").integer;
      std::vector<Node>& frames = at(answer, "frames").items;
      EXPECT_EQ(frames.size(), at(answer, "cycle").text == "hold" ? 1U : 60U) << where;
      moving += frames.size() > 1 ? 1 : 0;
      const Node* before = nullptr;
      for (const Node& frame : frames) {
        const std::vector<Node>& strokes = frame.find("strokes")->items;
        for (std::size_t s = 0; s < strokes.size(); ++s) {
          for (const char* x : {"x1", "x2"}) {
            EXPECT_GE(strokes[s].find(x)->integer, 0) << where;
            EXPECT_LE(strokes[s].find(x)->integer, width) << where;
          }
          for (const char* y : {"y1", "y2"}) {
            EXPECT_GE(strokes[s].find(y)->integer, 0) << where;
            EXPECT_LE(strokes[s].find(y)->integer, height) << where;
          }
          if (before == nullptr) continue;
          const Node& old = before->find("strokes")->items[s];
          for (const char* end : {"x1", "y1", "x2", "y2"}) {
            const std::int64_t moved = strokes[s].find(end)->integer - old.find(end)->integer;
            EXPECT_LT(std::abs(moved), 320) << where << ' ' << strokes[s].find("part")->text;
          }
        }
        before = &frame;
      }
    }
  }
  EXPECT_GT(moving, 40);
}

TEST(Figure, ARungWithAFigureOfItsOwnIsShownByIt) {
  const Node request = demo_request(kSquads[1]);
  for (const Node& drill : request.find("catalogue")->find("drills")->items) {
    if (drill.find("id")->text != "side-plank") continue;
    EXPECT_NE(to_json(shown(drill, "knees-down")), to_json(shown(drill, "legs-straight")));
    EXPECT_EQ(shown(drill, "legs-straight").find("frames")->items.size(), 1U) << "it is held";
  }
}

TEST(Figure, WithoutOneThatIsSaid) {
  Node drill = Node::make_table();
  drill.set("id", text("easy"));
  EXPECT_NE(to_json(shown(drill, "any")).find("a drill with a [figure] table"), std::string::npos);
  EXPECT_NE(to_json(shown(drill, "any", 99)).find("frames"), std::string::npos);
}

}  // namespace
}  // namespace lanework::door::test
