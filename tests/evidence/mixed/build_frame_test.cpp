#include "core/evidence/mixed/build_frame.h"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/evidence/table_of.h"

namespace lanework::evidence {
namespace {

const DataTable kWeeks =
    table_of({"club", "squad", "age", "warm_ups", "hours", "injuries"}, {
                                                                            {"N", "a", "U13", "2", "10", "0"},
                                                                            {"S", "a", "U15", "1", "20", "1"},
                                                                            {"N", "b", "U15", "0", "30", "2"},
                                                                            {"N", "a", "U13", "3", "5", "1"},
                                                                            {"S", "c", "U13", "3", "0", "0"},
                                                                            {"S", "a", "U15", "2", "15", "0"},
                                                                        });

ModelWanted wanted() {
  return {"injuries",
          "hours",
          "squad",
          "club",
          {{TermKind::kNumber, "warm_ups", {}, 0}, {TermKind::kCategory, "age", {}, 0}}};
}

std::string line_of(const Result<BuiltFrame>& built) {
  if (built) return "no fault";
  std::string out;
  for (const Fault& fault : built.faults()) out += (out.empty() ? "" : "\n") + to_line(fault);
  return out;
}

TEST(BuildFrame, PutsSquadsOfAClubTogether) {
  const auto built = build_frame(kWeeks, wanted());
  ASSERT_TRUE(built) << line_of(built);
  const BuiltFrame& b = built.value();
  EXPECT_EQ(b.frame.names, (std::vector<std::string>{"intercept", "warm_ups", "age: U13"}));
  EXPECT_EQ(b.squads, (std::vector<std::string>{"a", "b", "a"}));  // the last is another club's
  EXPECT_EQ(b.clubs, (std::vector<std::string>{"N", "S"}));
  EXPECT_EQ(b.frame.squad_ends, (std::vector<std::size_t>{2, 3, 5}));
  EXPECT_EQ(b.frame.club_ends, (std::vector<std::size_t>{2, 3}));
  EXPECT_EQ(b.frame.events, (std::vector<double>{0, 1, 2, 1, 0}));
  EXPECT_EQ(b.frame.design, (std::vector<double>{1, 2, 1, 1, 3, 1, 1, 0, 0, 1, 1, 0, 1, 2, 0}));
  EXPECT_EQ(b.rows_without_hours, 1);
  EXPECT_EQ(b.hours, 80);
  EXPECT_DOUBLE_EQ(b.frame.log_hours[2], std::log(30));
  EXPECT_EQ(b.terms[1].reference, "U15");  // the most hours
}

TEST(BuildFrame, AReferenceThatIsAskedFor) {
  ModelWanted model = wanted();
  model.terms[1].reference = "U13";
  const auto built = build_frame(kWeeks, model);
  ASSERT_TRUE(built);
  EXPECT_EQ(built.value().frame.names.back(), "age: U15");
  model.terms[1].reference = "U19";
  EXPECT_EQ(line_of(build_frame(kWeeks, model)),
            "weeks.csv: age: found 'U19' as the reference, expected a name that stands in the column, such as 'U15'");
}

TEST(BuildFrame, EventsInNoHoursAreAFault) {
  DataTable weeks = kWeeks;
  weeks.column[5][4] = "3";
  EXPECT_EQ(line_of(build_frame(weeks, wanted())),
            "weeks.csv:6: hours: found 3 events in 0 hours, expected hours above 0 where something happened");
}

TEST(BuildFrame, NamesInAColumnOfNumbersPointToCategories) {
  ModelWanted model = wanted();
  model.terms = {{TermKind::kNumber, "age", {}, 0}};
  EXPECT_NE(line_of(build_frame(kWeeks, model)).find("a column of names is given as --category"), std::string::npos);
}

TEST(BuildFrame, WhatCannotStandTogether) {
  ModelWanted model = wanted();
  model.terms[0].column = "hours";
  EXPECT_NE(line_of(build_frame(kWeeks, model)).find("'hours' for two purposes"), std::string::npos);
  model = wanted();
  model.squad.clear();
  EXPECT_NE(line_of(build_frame(kWeeks, model)).find("clubs without squads"), std::string::npos);
  model = wanted();
  model.terms = {{TermKind::kCurve, "warm_ups", {}, 9}};
  EXPECT_NE(line_of(build_frame(kWeeks, model)).find("too few different values for 9 degrees"), std::string::npos);
  model = wanted();
  model.hours = "minutes";
  EXPECT_NE(line_of(build_frame(kWeeks, model)).find("found 'minutes', expected a column of the table"),
            std::string::npos);
}

TEST(BuildFrame, NoHoursAtAll) {
  DataTable weeks = kWeeks;
  for (std::string& cell : weeks.column[4]) cell = "0";
  for (std::string& cell : weeks.column[5]) cell = "0";
  EXPECT_EQ(line_of(build_frame(weeks, wanted())),
            "weeks.csv: hours: found no row with hours, expected a row with hours");
}

TEST(BuildFrame, WithoutSquadsAllRowsAreOne) {
  ModelWanted model = wanted();
  model.squad.clear();
  model.club.clear();
  const auto built = build_frame(kWeeks, model);
  ASSERT_TRUE(built);
  EXPECT_EQ(built.value().frame.squads(), 1);
  EXPECT_TRUE(built.value().squads.empty());
}

}  // namespace
}  // namespace lanework::evidence
