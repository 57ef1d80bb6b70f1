#include "core/care/venue/missing.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <array>

#include "tests/care/venue/sample_venue.h"

namespace lanework::care {
namespace {

constexpr std::array<std::string VenuePlan::*, 12> kTexts = {&VenuePlan::address,       &VenuePlan::map,
                                                             &VenuePlan::way_in,        &VenuePlan::emergency_number,
                                                             &VenuePlan::phone,         &VenuePlan::defibrillator,
                                                             &VenuePlan::first_aid_bag, &VenuePlan::stays_with_player,
                                                             &VenuePlan::calls,         &VenuePlan::meets_ambulance,
                                                             &VenuePlan::minds_others,  &VenuePlan::responsible};

TEST(MissingOn, NothingOfAWholePlan) { EXPECT_TRUE(missing_on(test::whole_plan(), test::venue_day()).empty()); }

TEST(MissingOn, EachTextIsMissedOnce) {
  for (const auto text : kTexts) {
    VenuePlan plan = test::whole_plan();
    (plan.*text).clear();
    EXPECT_EQ(missing_on(plan, test::venue_day()).size(), 1U);
  }
}

TEST(MissingOn, OfAnEmptyPlanEverything) {
  const auto missing = missing_on({}, test::venue_day());
  EXPECT_EQ(missing.size(), kTexts.size() + 3);
  EXPECT_EQ(missing.front().words, "no emergency number");
}

TEST(MissingOn, ADateThatHasNotComeIsNone) {
  VenuePlan plan = test::whole_plan();
  plan.last_rehearsal = plan.ambulance_contact = plan.last_review = make_date(2026, 11, 27);
  const auto missing = missing_on(plan, test::venue_day());
  ASSERT_EQ(missing.size(), 3U);
  EXPECT_EQ(missing[0].words, "ambulance service not asked");
  EXPECT_EQ(missing[1].words, "no rehearsal yet");
  EXPECT_EQ(missing[2].words, "no review yet");
}

// Whatever is known: filling something in never adds to what is missing, and what is missing has no words twice.
TEST(MissingOn, ToKnowMoreNeverLacksMore) {
  EXPECT_TRUE(rc::check([] {
    VenuePlan plan;
    for (const auto text : kTexts) (plan.*text) = *rc::gen::element<std::string>("", "somebody");
    plan.last_rehearsal = Date{*rc::gen::inRange(20'000, 21'500)};
    const auto before = missing_on(plan, test::venue_day());
    const auto text = *rc::gen::elementOf(std::vector<std::string VenuePlan::*>(kTexts.begin(), kTexts.end()));
    const bool was_known = !(plan.*text).empty();
    (plan.*text) = "somebody";
    const auto after = missing_on(plan, test::venue_day());
    RC_ASSERT(after.size() + (was_known ? 0 : 1) == before.size());
    std::vector<std::string> words;
    for (const MissingItem& item : before) words.push_back(item.words);
    std::sort(words.begin(), words.end());
    RC_ASSERT(std::adjacent_find(words.begin(), words.end()) == words.end());
  }));
}

}  // namespace
}  // namespace lanework::care
