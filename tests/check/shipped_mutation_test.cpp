// A real plan of the demo squad, mutated: what holds for the worked evening holds for a shipped one.
#include <gtest/gtest.h>

#include "tests/check/requests.h"

namespace lanework::check {
namespace {

using namespace test;

class ShippedMutation : public testing::Test {
 protected:
  Node request_ = demo_request("u13-kestrels.toml");
  Node answer_ = planned(request_);

  void SetUp() override {
    const Report report = report_of(request_, answer_);
    ASSERT_TRUE(report.ok()) << lines(report);
    ASSERT_GE(at(answer_, "items").items.size(), 8U);
  }
  [[nodiscard]] Report report() const { return report_of(request_, answer_); }
};

TEST_F(ShippedMutation, AnyTwoNeighboursSwapped) {
  const std::size_t count = at(answer_, "items").items.size();
  for (std::size_t i = 1; i < count; ++i) {
    Node swapped = answer_;
    std::vector<Node>& items = at(swapped, "items").items;
    std::swap(items[i - 1], items[i]);
    EXPECT_TRUE(breaks(report_of(request_, swapped), "order")) << i;
  }
}

TEST_F(ShippedMutation, AnySecondsOffByOne) {
  for (std::size_t i = 0; i < at(answer_, "items").items.size(); ++i) {
    for (const auto& [key, rule] : {std::pair{"takes_seconds", "takes-seconds"},
                                    {"change_seconds", "change-seconds"},
                                    {"starts_seconds", "starts-seconds"}}) {
      Node other = answer_;
      at(other, "items." + std::to_string(i) + "." + key).integer += 1;
      EXPECT_TRUE(breaks(report_of(request_, other), rule)) << i << key;
    }
  }
}

TEST_F(ShippedMutation, ADrillLeftOutUnsaid) {
  erase(answer_, "items.3");
  EXPECT_TRUE(breaks(report(), "change-missing"));
  EXPECT_TRUE(breaks(report(), "planned-seconds"));
}

TEST_F(ShippedMutation, AShorterSlot) {
  const std::int64_t planned_seconds = at(answer_, "planned_seconds").integer;
  put(request_, "squad.slot.minutes", real(static_cast<double>(planned_seconds) / 60.0));
  EXPECT_TRUE(breaks(report(), "slot"));
}

TEST_F(ShippedMutation, NobodysKneeOrAnkle) {
  Node row = Node::make_table();
  row.set("squad", text("U13"));
  row.set("kinds", texts({"impact"}));
  at(request_, "restrictions.restriction").items.push_back(row);
  EXPECT_TRUE(breaks(report(), "squad-restriction"));
}

TEST_F(ShippedMutation, AMatchToday) {
  put(request_, "squad.slot.days_to_match", number(0));
  EXPECT_FALSE(report().ok());
}

TEST_F(ShippedMutation, EveryNameOfTheRosterIsFound) {
  const std::vector<Node>& roster = request_.find("roster")->items;
  ASSERT_GE(roster.size(), 20U);
  for (const Node& player : roster) {
    Node other = answer_;
    put(other, "time.saving", text("as with " + player.find("name")->text + " last week"));
    EXPECT_TRUE(breaks(report_of(request_, other), "private")) << player.find("name")->text;
  }
}

}  // namespace
}  // namespace lanework::check
