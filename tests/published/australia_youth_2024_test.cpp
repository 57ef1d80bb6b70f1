// A national framework for youth and community sport (Australia): 18 or under, 14 days without symptoms before
// clearance to contact. Read; its year is from memory.
#include <gtest/gtest.h>

#include "tests/care/shipped_rules.h"

namespace lanework::care {
namespace {

int days_before_contact(std::optional<int> age, const std::string& rules) {
  const Course course = course_in_force(test::return_rules(), "concussion", rules, age).course;
  return course.gate(*course.gate_with("contact")).symptom_free_hours / 24;
}

TEST(AustraliaYouth2024, FourteenDaysFor18OrUnder) {
  for (const int age : {8, 14, 18}) EXPECT_EQ(days_before_contact(age, "symptom-free-14-days"), 14);
  EXPECT_EQ(days_before_contact(19, "symptom-free-14-days"), 0);
}

TEST(AustraliaYouth2024, AnAgeOrRulesNotKnownAreHeldToIt) {
  EXPECT_EQ(days_before_contact({}, "symptom-free-14-days"), 14);
  EXPECT_EQ(days_before_contact(14, ""), 14);
  EXPECT_EQ(days_before_contact({}, "of a league"), 14);
  EXPECT_EQ(days_before_contact(14, "consensus"), 0);
}

}  // namespace
}  // namespace lanework::care
