// What the scripts read of each kind of chart (web/charts/data.ts names the same fields).
#include "app/report/chart_data.h"

#include <gtest/gtest.h>

namespace lanework::report {
namespace {

TEST(ChartData, Intervals) {
  Intervals data{"per 1000 hours",
                 {{"Kites", 2.5, 1, 6, "1 to 6"}, {"Herons", 0, 0, std::nullopt, ""}},
                 Reference{3.1, "club"},
                 true};
  EXPECT_EQ(to_json(to_node("one", data)), R"({"kind":"intervals","x_title":"per 1000 hours","rows":[)"
                                           R"({"label":"Kites","estimate":2.5,"low":1.0,"high":6.0,"note":"1 to 6"},)"
                                           R"({"label":"Herons","estimate":0.0,"low":0.0}],)"
                                           R"("reference":{"value":3.1,"label":"club"},"log":true,"id":"one"})");
  data.reference.reset();
  data.log = false;
  const Node plain = to_node("one", data);
  EXPECT_EQ(plain.find("reference"), nullptr);
  EXPECT_EQ(plain.find("log"), nullptr);
}

TEST(ChartData, Funnel) {
  EXPECT_EQ(
      to_json(to_node("f", Funnel{"x", "y", "in", "out", {{"Kites", 2.5, 1.5}}, {{1, 0.5, 1.5, 0.25, 1.75}}})),
      R"({"kind":"funnel","x_title":"x","y_title":"y","inner_name":"in","outer_name":"out",)"
      R"("points":[{"label":"Kites","expected":2.5,"ratio":1.5}],)"
      R"("lines":[{"expected":1.0,"inner_low":0.5,"inner_high":1.5,"outer_low":0.25,"outer_high":1.75}],"id":"f"})");
}

TEST(ChartData, Watch) {
  EXPECT_EQ(
      to_json(to_node("w", Watch{"events", "sum", {{"1 Sep", 2, 0.5, 1.25, true}}, 4})),
      R"({"kind":"watch","events_title":"events","sum_title":"sum",)"
      R"("weeks":[{"label":"1 Sep","events":2.0,"expected":0.5,"sum":1.25,"alarm":true}],"decision":4.0,"id":"w"})");
}

TEST(ChartData, Curve) {
  EXPECT_EQ(
      to_json(to_node("c", Curve{"x", "y", "none", {{5, 1, 0.5, 2}}, {{5, 120}}, true})),
      R"({"kind":"curve","x_title":"x","y_title":"y","reference_label":"none",)"
      R"("points":[{"value":5.0,"times":1.0,"low":0.5,"high":2.0}],"hours":[{"value":5.0,"hours":120.0}],"log":true,"id":"c"})");
}

TEST(ChartData, SharesAndWeeks) {
  EXPECT_EQ(
      to_json(to_node("s", Shares{{{"Kites", {{"done", 3}, {"few", 0}}}}})),
      R"({"kind":"shares","rows":[{"label":"Kites","parts":[{"name":"done","count":3},{"name":"few","count":0}]}],"id":"s"})");
  EXPECT_EQ(to_json(to_node("h", Weeks{"hours", "injuries", {"training", "matches"}, {{"1 Sep", {12.5, 3}, 2}}})),
            R"({"kind":"weeks","hours_title":"hours","events_title":"injuries","settings":["training","matches"],)"
            R"("weeks":[{"label":"1 Sep","hours":[12.5,3.0],"events":2}],"id":"h"})");
}

}  // namespace
}  // namespace lanework::report
