#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include "core/access/relation.h"

namespace lanework::access {
namespace {

using ledger::Role;

Date day(int n) { return Date{20'000 + n}; }

TEST(Relation, ACoachHasASquadFromTheFirstDayToTheLastBothIncluded) {
  const std::vector<Charge> charges = {{"u13", day(1), day(5), false}};
  EXPECT_EQ(relation_to(Role::kCoach, charges, "u13", day(0)), Relation::kOther);
  EXPECT_EQ(relation_to(Role::kCoach, charges, "u13", day(1)), Relation::kOwn);
  EXPECT_EQ(relation_to(Role::kCoach, charges, "u13", day(5)), Relation::kOwn);
  EXPECT_EQ(relation_to(Role::kCoach, charges, "u13", day(6)), Relation::kFormer);
  EXPECT_EQ(relation_to(Role::kCoach, charges, "u16", day(3)), Relation::kOther);
}

TEST(Relation, ASubstituteIsOneForTheEveningOnly) {
  const std::vector<Charge> charges = {{"u13", day(3), day(3), true}};
  EXPECT_EQ(relation_to(Role::kCoach, charges, "u13", day(3)), Relation::kSubstitute);
  EXPECT_EQ(relation_to(Role::kCoach, charges, "u13", day(4)), Relation::kFormer);
}

TEST(Relation, ALeadHasEverySquadBoardAndOperatorNone) {
  const std::vector<Charge> charges = {{"u13", day(0), day(9), false}};
  EXPECT_EQ(relation_to(Role::kLead, {}, "u13", day(1)), Relation::kOwn);
  EXPECT_EQ(relation_to(Role::kBoard, charges, "u13", day(1)), Relation::kOther);
  EXPECT_EQ(relation_to(Role::kOperator, charges, "u13", day(1)), Relation::kOther);
}

RC_GTEST_PROP(Relation, IsTheNearestOfAllChargesInWhateverOrder, ()) {
  std::vector<Charge> charges;
  for (int i = 0; i < *rc::gen::inRange(0, 6); ++i) {
    const int from = *rc::gen::inRange(0, 10);
    charges.push_back({*rc::gen::element(std::string("u13"), std::string("u16")), day(from),
                       day(from + *rc::gen::inRange(0, 5)), *rc::gen::arbitrary<bool>()});
  }
  const Date today = day(*rc::gen::inRange(0, 15));
  const Relation here = relation_to(Role::kCoach, charges, "u13", today);
  Relation nearest = Relation::kOther;
  for (const Charge& charge : charges) nearest = std::min(nearest, relation_to(Role::kCoach, {charge}, "u13", today));
  RC_ASSERT(here == nearest);
  std::reverse(charges.begin(), charges.end());
  RC_ASSERT(relation_to(Role::kCoach, charges, "u13", today) == here);
}

}  // namespace
}  // namespace lanework::access
