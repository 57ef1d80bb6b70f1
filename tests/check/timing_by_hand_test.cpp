// Times of every kind of drill, worked by hand from docs/model/clock.md, through a plan edited by hand on the
// tiny evening: six players, lanes of 10 m with cones every 5 m, an area of 10 x 8 m, jog 2 m/s, walk 1 m/s.
#include <gtest/gtest.h>

#include "tests/check/requests.h"
#include "tests/check/tiny.h"

namespace lanework::check {
namespace {

using namespace test;

std::int64_t takes(const Node& request, const std::string& drill, const std::string& rung, int sets, int amount) {
  const std::string toml = "[[drill]]\nid = \"" + drill + "\"\nrung = \"" + rung +
                           "\"\nsets = " + std::to_string(sets) + "\namount = " + std::to_string(amount) + "\n";
  const auto document = parse_toml("edited.toml", toml);
  const auto report = check_edited(request, document.value());
  return report && report.value().items.size() == 1 ? report.value().items[0].takes_seconds : -1;
}

class TimingByHand : public testing::Test {
 protected:
  Node request_ = tiny_request();

  void SetUp() override { put(request_, "squad.taught", Node::make_table()); }
  void lane(const std::string& key, Node value) { put(request_, "catalogue.drills.0.lane." + key, std::move(value)); }
  void dose(const std::string& key, Node value) { put(request_, "catalogue.drills.0.dose." + key, std::move(value)); }
  void jump(const std::string& key, Node value) { put(request_, "catalogue.drills.3." + key, std::move(value)); }
};

TEST_F(TimingByHand, OneWay) {
  lane("shape", text("one-way"));
  // Loop 5 + 1; a pass of three 2 x 2 + 6 = 10 s; three passes 30 s, told in 20.
  EXPECT_EQ(takes(request_, "easy-laps", "easy", 1, 3), 50);
}

TEST_F(TimingByHand, FacingHalfFiles) {
  lane("shape", text("facing"));
  // Two in the longer half file: loop 6 > 2 x 2; 2 x 6 + 2 + 6 = 20 s.
  EXPECT_EQ(takes(request_, "easy-laps", "easy", 1, 3), 40);
}

TEST_F(TimingByHand, HeldStops) {
  lane("stop_at_cones", yes());
  lane("stop_seconds", number(3));
  // Two stops: loop 16 + 6 = 22 s; gap 3 s; three passes 2 x 22 + 2 x 3 + 22 = 72 s.
  EXPECT_EQ(takes(request_, "easy-laps", "easy", 1, 3), 92);
}

TEST_F(TimingByHand, RunAtAShareOfTopSpeed) {
  Node gait = at(request_, "catalogue.gaits.gait.1");
  gait.set("key", text("run"));
  gait.set("speeds", [] {
    Node speeds = Node::make_array();
    for (int age = 8; age <= 19; ++age) speeds.items.push_back(real(5.0));
    return speeds;
  }());
  at(request_, "catalogue.gaits.gait").items.push_back(gait);
  lane("out", text("run"));
  lane("share_of_top_speed", number(80));
  // 10 m at 4 m/s 2.5 s and 1 s to start, turn 1, back 10: 14.5 s; one pass of three 4 + 14.5 = 18.5 s.
  EXPECT_EQ(takes(request_, "easy-laps", "easy", 1, 1), 39);
}

TEST_F(TimingByHand, SidesInTheLane) {
  dose("sides", yes());
  dose("side_change_seconds", number(4));
  // Twice the passes: 36 s and 4 s.
  EXPECT_EQ(takes(request_, "easy-laps", "easy", 1, 1), 60);
}

TEST_F(TimingByHand, WavesWhereTheAreaIsSmall) {
  jump("space_metres.width", number(5));
  jump("space_metres.length", number(4));
  // Two by two fit, the other way round two: two waves of 15 s with 8 s between, told in 20.
  EXPECT_EQ(takes(request_, "jump-and-stick", "forward", 1, 5), 58);
}

TEST_F(TimingByHand, PartnersTakeTurnsAndATrioThree) {
  jump("formation", text("pairs"));
  jump("pair.swap_seconds", number(6));
  EXPECT_EQ(takes(request_, "jump-and-stick", "forward", 1, 5), 56);  // 15 + 6 + 15, told in 20
  put(request_, "squad.tonight.turnout", number(7));
  EXPECT_EQ(takes(request_, "jump-and-stick", "forward", 1, 5), 77);  // three turns
  jump("pair.both_at_once", yes());
  EXPECT_EQ(takes(request_, "jump-and-stick", "forward", 1, 5), 35);
}

TEST_F(TimingByHand, TellingFallsToItsFloor) {
  put(request_, "squad.taught.jump-and-stick", number(8));
  EXPECT_EQ(takes(request_, "jump-and-stick", "forward", 1, 5), 22);  // a third: 6.66 s
  put(request_, "squad.taught.jump-and-stick", number(500));
  EXPECT_EQ(takes(request_, "jump-and-stick", "forward", 1, 5), 20);  // 5 s
}

}  // namespace
}  // namespace lanework::check
