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

Node shown_with_props(const Node& drill, const std::string& rung, std::int64_t frames = 24) {
  Node request = figure_request(drill, rung, frames);
  request.set("props", Node::make_boolean(true));
  return parse_json("answer", run(to_json(request))).value().root;
}

void expect_within(const Node& spot, const char* x, const char* y, Node& answer, const std::string& where) {
  EXPECT_GE(spot.find(x)->integer, 0) << where;
  EXPECT_LE(spot.find(x)->integer, at(answer, "width").integer) << where;
  EXPECT_GE(spot.find(y)->integer, 0) << where;
  EXPECT_LE(spot.find(y)->integer, at(answer, "height").integer) << where;
}

std::int64_t moved(const Node& before, const Node& now, const char* key) {
  return std::abs(now.find(key)->integer - before.find(key)->integer);
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

// The same figure, and beside it whom and what its key poses have: in the picture all the while, and nobody jumps.
TEST(Figure, PartnersAndThingsAreInThePictureAndMoveSmoothly) {
  const Node request = demo_request(kSquads[1]);
  int partners = 0;
  int things = 0;
  for (const Node& drill : request.find("catalogue")->find("drills")->items) {
    for (const Node& rung : drill.find("rung")->items) {
      const std::string key = rung.find("key")->text;
      const std::string where = drill.find("id")->text + " " + key;
      Node alone = shown(drill, key, 60);
      Node answer = shown_with_props(drill, key, 60);
      ASSERT_EQ(at(answer, "answer").text, "figure") << where;
      std::vector<Node>& frames = at(answer, "frames").items;
      const bool with_partner = frames[0].find("partner") != nullptr;
      const std::size_t props = answer.find("props") == nullptr ? 0 : answer.find("props")->items.size();
      partners += with_partner ? 1 : 0;
      things += props > 0 ? 1 : 0;
      EXPECT_EQ(to_json(alone).find("partner"), std::string::npos) << where;
      EXPECT_EQ(alone.find("props"), nullptr) << where;
      const std::int64_t beside = at(answer, "frames.0.head.x").integer - at(alone, "frames.0.head.x").integer;
      for (std::size_t i = 0; i < frames.size(); ++i) {
        EXPECT_LE(std::abs(frames[i].find("head")->find("x")->integer - beside -
                           at(alone, "frames").items[i].find("head")->find("x")->integer),
                  1)
            << where;
        ASSERT_EQ(frames[i].find("partner") != nullptr, with_partner) << where;
        if (with_partner) {
          const std::vector<Node>& strokes = frames[i].find("partner")->find("strokes")->items;
          for (std::size_t s = 0; s < strokes.size(); ++s) {
            expect_within(strokes[s], "x1", "y1", answer, where);
            expect_within(strokes[s], "x2", "y2", answer, where);
            if (i == 0) continue;
            const Node& old = frames[i - 1].find("partner")->find("strokes")->items[s];
            for (const char* end : {"x1", "y1", "x2", "y2"}) EXPECT_LT(moved(old, strokes[s], end), 320) << where;
          }
        }
        for (std::size_t p = 0; p < props; ++p) {
          const Node& place = frames[i].find("props")->items[p];
          if (place.find("x") == nullptr) continue;
          expect_within(place, "x", "y", answer, where);
          const Node* old = i == 0 ? nullptr : &frames[i - 1].find("props")->items[p];
          if (old == nullptr || old->find("x") == nullptr) continue;
          EXPECT_LT(moved(*old, place, "x") + moved(*old, place, "y"), 400) << where;
        }
      }
    }
  }
  EXPECT_GT(partners, 30);
  EXPECT_GT(things, 40);
}

// What is around the figure goes with it when the whole picture is turned round.
TEST(Figure, TurnedRoundItIsTheSamePictureInAMirror) {
  const Node request = demo_request(kSquads[1]);
  for (const Node& one : request.find("catalogue")->find("drills")->items) {
    if (one.find("id")->text != "kneeling-hamstring-lower-at-bar") continue;
    Node drill = one;
    Node right = shown_with_props(drill, "any", 4);
    put(drill, "figure.facing", text("left"));
    Node left = shown_with_props(drill, "any", 4);
    ASSERT_EQ(at(right, "props").items.size(), 3U);
    EXPECT_EQ(at(left, "width").integer, at(right, "width").integer);
    for (std::size_t p = 0; p < 3; ++p) {
      const auto x = [&](Node& answer) {
        return at(answer, "frames").items[1].find("props")->items[p].find("x")->integer;
      };
      EXPECT_NEAR(static_cast<double>(x(left)), static_cast<double>(at(right, "width").integer - x(right)), 1);
      Node& shape = at(right, "props").items[p].entries.back().second.items[0];
      Node& mirrored = at(left, "props").items[p].entries.back().second.items[0];
      EXPECT_EQ(at(shape, "points").items[0].integer, -at(mirrored, "points").items[0].integer);
    }
  }
}

TEST(Figure, TheCardsPoseIsNamedByItsFrame) {
  const Node request = demo_request(kSquads[1]);
  for (const Node& drill : request.find("catalogue")->find("drills")->items) {
    Node answer = shown(drill, "any", 24);
    const auto main = static_cast<std::size_t>(at(answer, "main").integer);
    ASSERT_LT(main, at(answer, "frames").items.size());
    if (drill.find("id")->text != "squat") continue;
    EXPECT_EQ(main, 12U) << "half way";
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
