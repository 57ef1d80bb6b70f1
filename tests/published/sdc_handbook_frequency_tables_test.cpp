// Frequency tables that give something away: the Handbook on Statistical Disclosure Control of the European statistical
// system, chapter 'Frequency tables', section 'Disclosure risks' (github.com/sdcTools/HandbookSDC, read November 2026).
// Its tables as releases.
#include <gtest/gtest.h>

#include <algorithm>
#include <map>

#include "tests/release/club_of_test.h"

namespace lanework::release {
namespace {

using test::free_release;

// 'Differencing': men in single households by hours worked, in an area and in one that is a little larger.
TEST(SdcHandbookFrequencyTables, TwoAreasSubtractedGiveSmallCellsAway) {
  const Release smaller = free_release(1, test::kAutumn, {{{50, 128, 39}, {217}, {217}}});
  Release larger = free_release(2, test::kSeason, {{{2, 2, 0}, {4}, {4}}});
  larger.whole = together(larger.own, smaller.whole);
  std::map<std::string, Interval> found;
  for (const NotGiven& one : audit({smaller, larger})) {
    if (one.table == Table::kSquads && one.days == Days::kRest && !one.key.empty() && one.exposed()) {
      found[one.key] = one.interval;
    }
  }
  EXPECT_EQ(found, (std::map<std::string, Interval>{{"a", {2, 2}}, {"b", {2, 2}}, {"c", {0, 0}}}));
}

// 'Identification' and 'group attribute disclosure': a single 1, and a group all of whom share what is 0 elsewhere. Of
// 'marital status by sex' the women: 17 married, 4 divorced, 1 single.
TEST(SdcHandbookFrequencyTables, AOneIsHiddenOnlyWithAnotherThatKeepsIt) {
  Release women = free_release(1, test::kSeason, {{{17, 4, 1}, {22}, {22}}});
  women.hidden[0] = {"c"};
  const auto exposed = exposed_in(women, {}, Table::kSquads);
  ASSERT_EQ(exposed.size(), 1U);
  EXPECT_EQ(exposed.front().interval, (Interval{1, 1})) << "22 - 17 - 4";
  women.hidden[0] = {"b", "c"};
  EXPECT_TRUE(exposed_in(women, {}, Table::kSquads).empty()) << "five between two";
}

// Of 'marital status by hours worked' the married: 6 full time, none part time. None is small, too: it tells of all.
TEST(SdcHandbookFrequencyTables, NoneTellsOfAWholeGroup) {
  Release married = free_release(1, test::kSeason, {{{6, 0}, {6}, {6}}});
  married.hidden[0] = {"b"};
  EXPECT_EQ(exposed_in(married, {}, Table::kSquads).front().interval, (Interval{0, 0}));
  married.hidden[0] = {"a", "b"};
  EXPECT_TRUE(exposed_in(married, {}, Table::kSquads).empty());
}

}  // namespace
}  // namespace lanework::release
